import QtQuick
import Flowhand

/// What the run lost, worst first.
Card {
    id: card

    required property RowModel ledger
    required property bool scored

    implicitHeight: head.height + Math.max(list.contentHeight, Tokens.bodySize * 2) + Tokens.gap16 + Tokens.gap8 + Tokens.gap16

    PlainText {
        id: head
        x: Tokens.gap24
        y: Tokens.gap16
        text: qsTr("What it cost")
        font.pixelSize: Tokens.strongSize
        font.weight: Font.DemiBold
    }
    PlainText {
        anchors.top: head.bottom
        anchors.topMargin: Tokens.gap8
        x: Tokens.gap24
        visible: card.ledger.count === 0
        text: card.scored ? qsTr("No point was lost.") : qsTr("There was nothing to score in this run.")
    }
    ListView {
        id: list
        anchors { top: head.bottom; left: parent.left; right: parent.right; bottom: parent.bottom; topMargin: Tokens.gap8; leftMargin: Tokens.gap24; rightMargin: Tokens.gap12; bottomMargin: Tokens.gap12 }
        clip: true
        spacing: Tokens.gap8
        model: card.ledger
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: LedgerLine {
            width: list.width - 12
        }
    }
}
