import QtQuick
import Flowhand

/// Every step with its times and what became of it.
Card {
    id: card

    required property RowModel steps

    PlainText {
        id: head
        x: Tokens.gap24
        y: Tokens.gap16
        text: qsTr("Step by step")
        font.pixelSize: Tokens.strongSize
        font.weight: Font.DemiBold
    }
    StepTableRow {
        id: columns
        anchors.top: head.bottom
        anchors.topMargin: Tokens.gap4
        x: Tokens.gap24
        width: list.width - 12
        isHead: true
        title: qsTr("Step")
        who: qsTr("By")
        dueAt: qsTr("Due")
        doneAt: qsTr("Done")
        word: qsTr("Outcome")
        detail: ""
        verdict: -1
        own: true
    }
    ListView {
        id: list
        anchors { top: columns.bottom; left: parent.left; right: parent.right; bottom: parent.bottom; topMargin: Tokens.gap4; leftMargin: Tokens.gap24; rightMargin: Tokens.gap12; bottomMargin: Tokens.gap12 }
        clip: true
        model: card.steps
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: StepTableRow {
            width: list.width - 12
        }
    }
}
