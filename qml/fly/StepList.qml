import QtQuick
import Flowhand

/// Steps in a column: those to come, or those that are over with what became of them.
Card {
    id: card

    required property string title
    required property string emptyText
    required property RowModel steps
    property bool withVerdict: false

    PlainText {
        id: head
        x: Tokens.gap16
        y: Tokens.gap12
        text: card.title
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    PlainText {
        anchors.top: head.bottom
        anchors.topMargin: Tokens.gap8
        x: Tokens.gap16
        width: card.width - 2 * Tokens.gap16
        visible: card.steps.count === 0
        text: card.emptyText
    }
    ListView {
        id: list
        anchors { top: head.bottom; left: parent.left; right: parent.right; bottom: parent.bottom; topMargin: Tokens.gap8; leftMargin: Tokens.gap16; rightMargin: Tokens.gap8; bottomMargin: Tokens.gap8 }
        clip: true
        spacing: Tokens.gap8
        model: card.steps
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: StepLine {
            width: list.width - 12
            withVerdict: card.withVerdict
        }
    }
}
