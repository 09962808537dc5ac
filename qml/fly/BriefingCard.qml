import QtQuick
import Flowhand

/// What is said of a scenario before it is flown.
Item {
    id: briefing

    required property RowModel facts

    PlainText {
        id: head
        text: qsTr("Briefing")
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    Flickable {
        anchors { top: head.bottom; topMargin: Tokens.gap8; left: parent.left; right: parent.right; bottom: parent.bottom }
        contentHeight: list.height
        clip: true
        ThinScrollBar.vertical: ThinScrollBar {}
        FactList {
            id: list
            width: parent.width - 12
            facts: briefing.facts
        }
    }
}
