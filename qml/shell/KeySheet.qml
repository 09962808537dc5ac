import QtQuick
import Flowhand

/// All keys, beside the place rather than over it.
Card {
    id: sheet

    required property RowModel controlKeys
    signal closed

    readonly property list<string> generalKeys: [
        qsTr("F1"), qsTr("show or hide the keys"), qsTr("Return"), qsTr("the main button"),
        qsTr("Space"), qsTr("reply"), qsTr("F2"), qsTr("hold, and go on"), qsTr("F3"), qsTr("repeat the step"),
        qsTr("F4"), qsTr("show or hide the on-screen controls"), qsTr("F7"), qsTr("jump to another step"), qsTr("F8"), qsTr("stop the run"), qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Esc"), qsTr("back to the flows, between runs"),
        qsTr("Page"), qsTr("Page Up, Page Down: another aircraft, or its scenarios"),
        qsTr("Ctrl 1, 2"), qsTr("to Fly, to Bench; not during a run"),
        qsTr("Tab"), qsTr("to the next button or control; arrow keys move it")
    ]

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
                model: sheet.generalKeys.length / 2
                KeyLine {
                    required property int index
                    width: column.width
                    keyName: sheet.generalKeys[index * 2]
                    does: sheet.generalKeys[index * 2 + 1]
                }
            }
            Item { width: 1; height: Tokens.gap8 }
            PlainText {
                visible: sheet.controlKeys.count > 0
                text: qsTr("On-screen controls")
                font.weight: Font.DemiBold
            }
            Repeater {
                model: sheet.controlKeys
                KeyLine {
                    required property string key
                    required property string action
                    width: column.width
                    keyName: key
                    does: action
                }
            }
        }
    }
}
