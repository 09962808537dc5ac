import QtQuick
import Flowhand

/// The aircraft and their scenarios, and whose are listed.
Flickable {
    id: bar

    required property RowModel groups
    required property int group
    signal chosen(group: int)

    implicitHeight: row.implicitHeight
    contentWidth: row.width
    clip: true
    Accessible.role: Accessible.PageTabList
    Accessible.name: qsTr("Aircraft")

    Row {
        id: row
        spacing: Tokens.gap4
        Repeater {
            model: bar.groups
            TabButton {
                required property int rowId
                required property string title
                text: title
                isHere: rowId === bar.group
                onClicked: bar.chosen(rowId)
                onActiveFocusChanged: if (activeFocus) bar.contentX = Math.max(0, Math.min(x, bar.contentWidth - bar.width))
            }
        }
    }
}
