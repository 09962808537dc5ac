import QtQuick
import Flowhand

/// All keys, beside the place rather than over it.
Card {
    id: sheet

    required property KeyChoice keys
    required property RowModel controlKeys
    signal closed

    implicitWidth: 360 * Tokens.textScale
    color: Tokens.raised

    Item {
        id: head
        x: Tokens.gap16
        y: Tokens.gap12
        width: parent.width - 2 * Tokens.gap16
        height: title.height
        PlainText {
            id: title
            text: qsTr("Keys")
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        QuietButton {
            anchors.right: parent.right
            text: qsTr("Close")
            keyName: "F1"
            onClicked: sheet.closed()
        }
    }
    Flickable {
        id: flick
        anchors { top: head.bottom; topMargin: Tokens.gap8; left: parent.left; right: parent.right; bottom: parent.bottom; margins: Tokens.gap16 }
        contentHeight: column.height
        clip: true
        ThinScrollBar.vertical: ThinScrollBar {}
        Column {
            id: column
            width: flick.width - 12
            spacing: Tokens.gap8
            Repeater {
                model: sheet.keys.sheet
                KeyLine {
                    required property string key
                    required property string action
                    width: column.width
                    keyName: key
                    does: action
                }
            }
            Item { width: 1; height: Tokens.gap8 }
            PlainText {
                visible: sheet.keys.place === 0 && sheet.controlKeys.count > 0
                text: qsTr("On-screen controls")
                font.weight: Font.DemiBold
            }
            Repeater {
                model: sheet.keys.place === 0 ? sheet.controlKeys : null
                KeyLine {
                    required property string key
                    required property string action
                    width: column.width
                    keyName: Tokens.keyNames(key)
                    does: action
                }
            }
        }
    }
}
