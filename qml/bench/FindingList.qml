import QtQuick
import QtQuick.Layouts
import Flowhand

/// What was measured of the chosen control, what is wrong first, and what to do about it.
Card {
    id: card

    required property BenchPresenter bench

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap8
        PlainText {
            text: qsTr("Its signal")
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: card.bench.measuredWords
            color: Tokens.quiet
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            spacing: Tokens.gap12
            model: card.bench.findings
            ThinScrollBar.vertical: ThinScrollBar {}
            delegate: FindingLine {
                width: list.width - 12
            }
        }
        Repeater {
            model: card.bench.notices
            NoticeLine {
                required property string words
                Layout.fillWidth: true
                verdict: Verdict.Info
                text: words
            }
        }
    }
}
