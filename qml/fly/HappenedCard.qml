import QtQuick
import Flowhand

/// What a scenario brought, and when.
Card {
    id: card

    required property RowModel happened

    implicitHeight: column.implicitHeight + 2 * Tokens.gap16

    Column {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap24; rightMargin: Tokens.gap24 }
        spacing: Tokens.gap8
        PlainText {
            text: qsTr("What happened")
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        PlainText {
            visible: card.happened.count === 0
            width: parent.width
            text: qsTr("Nothing unexpected.")
        }
        FactList {
            width: parent.width
            labelWidth: 64 * Tokens.textScale
            facts: card.happened
        }
    }
}
