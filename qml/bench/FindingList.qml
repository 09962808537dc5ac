import QtQuick
import QtQuick.Layouts
import Flowhand

/// What was measured of the chosen control, what is wrong first, and what to do about it.
Card {
    id: card

    required property BenchPresenter bench
    required property bool busy

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
            header: Column {
                width: list.width - 12
                spacing: Tokens.gap8
                bottomPadding: card.bench.notices.count > 0 ? Tokens.gap12 : 0
                onHeightChanged: list.positionViewAtBeginning() // a list leaves what its header grows by above its edge
                Repeater {
                    model: card.bench.notices
                    NoticeLine {
                        required property string words
                        width: parent.width
                        verdict: Verdict.Info
                        text: words
                    }
                }
            }
            delegate: FindingLine {
                width: list.width - 12
            }
        }
        FilterPanel {
            Layout.fillWidth: true
            bench: card.bench
            busy: card.busy
        }
    }
}
