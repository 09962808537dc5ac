import QtQuick
import QtQuick.Layouts
import Flowhand

/// Every control of the cockpit; those that are wired stir when they are moved.
Card {
    id: card

    required property BenchPresenter bench

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap12
        spacing: Tokens.gap4
        PlainText {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap4
            text: card.bench.rigTitle
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap4
            text: card.bench.deviceWords
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            maximumLineCount: 3
            elide: Text.ElideRight
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.topMargin: Tokens.gap4
            clip: true
            model: card.bench.controls
            currentIndex: card.bench.chosen
            highlightMoveDuration: 0
            ThinScrollBar.vertical: ThinScrollBar {}
            delegate: BenchControlLine {
                required property int index
                width: list.width - 12
                chosen: index === card.bench.chosen
                onPicked: card.bench.choose(index)
            }
        }
    }
}
