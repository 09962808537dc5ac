import QtQuick
import Flowhand

/// The steps of a flow, to be read before it is flown: down the columns.
Item {
    id: preview

    required property RowModel steps
    readonly property real lineHeight: Math.round(Tokens.bodySize * 1.9)

    PlainText {
        id: head
        text: qsTr("Its steps")
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    GridView {
        id: grid
        anchors { top: head.bottom; topMargin: Tokens.gap8; left: parent.left; right: parent.right; bottom: parent.bottom }
        clip: true
        flow: GridView.FlowTopToBottom
        cellWidth: Math.floor(width / Math.max(1, Math.floor(width / (390 * Tokens.textScale))))
        cellHeight: preview.lineHeight
        model: preview.steps
        ThinScrollBar.horizontal: ThinScrollBar {}
        delegate: Item {
            id: cell
            required property int index
            required property string title
            required property string who
            required property bool own
            width: grid.cellWidth
            height: grid.cellHeight
            PlainText {
                id: number
                width: 28 * Tokens.textScale
                horizontalAlignment: Text.AlignRight
                text: cell.index + 1
                color: Tokens.quiet
            }
            PlainText {
                anchors.left: number.right
                anchors.leftMargin: Tokens.gap12
                width: parent.width - x - Tokens.gap16
                text: cell.own ? cell.title : qsTr("%1 (%2)").arg(cell.title).arg(cell.who)
                color: cell.own ? Tokens.text : Tokens.quiet
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
            }
        }
    }
}
