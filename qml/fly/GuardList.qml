import QtQuick
import Flowhand

/// Guards that were broken in this run.
Card {
    id: card

    required property RowModel guards

    implicitHeight: column.implicitHeight + 2 * Tokens.gap12
    border.width: 1
    border.color: Tokens.wrong

    Column {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; margins: Tokens.gap16 }
        spacing: Tokens.gap4
        Repeater {
            model: card.guards
            NoticeLine {
                required property string title
                required property bool open
                width: column.width
                verdict: Verdict.Wrong
                text: open ? qsTr("Now: %1").arg(title) : qsTr("Guard broken: %1").arg(title)
            }
        }
    }
}
