import QtQuick
import Flowhand

/// All keys, beside the place rather than over it.
Card {
    id: sheet

    required property RowModel controlKeys
    /// 0 Fly, 1 Bench.
    required property int place
    signal closed

    readonly property list<string> benchKeys: [
        qsTr("F1"), qsTr("show or hide the keys"), qsTr("Return"), qsTr("the main button"),
        "↑ ↓", qsTr("choose a control"), "W", qsTr("wire it"), "O", qsTr("wire it another way"),
        "C", qsTr("calibrate it"), "V", qsTr("give its true values"), "R", qsTr("check its calibration again"),
        "M", qsTr("measure its signal"), "K", qsTr("check walk of all controls"),
        "T", qsTr("set its tolerances"), "A", qsTr("use the filters that the measurement asks for"), "U", qsTr("take that back"), qsTr("Esc"), qsTr("stop what goes on"),
        "F", qsTr("steps of the next flow alone"), "B", qsTr("steps of both seats, or of the first"), "X", qsTr("save the table as CSV"),
        "S", qsTr("save the check sheet"), "P", qsTr("open it"),
        qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Ctrl 1, 2"), qsTr("to Fly, to Bench"),
        qsTr("Tab"), qsTr("to the next button or control")
    ]
    readonly property list<string> flyKeys: [
        qsTr("F1"), qsTr("show or hide the keys"), qsTr("Return"), qsTr("the main button"),
        qsTr("Space"), qsTr("reply"), qsTr("F2"), qsTr("hold, and go on"), qsTr("F3"), qsTr("repeat the step"),
        qsTr("F4"), qsTr("show or hide the on-screen controls"), qsTr("F7"), qsTr("jump to another step"), qsTr("F8"), qsTr("stop the run"), qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Esc"), qsTr("back to the flows, between runs"),
        qsTr("Page"), qsTr("Page Up, Page Down: another aircraft, or its scenarios"),
        qsTr("Ctrl 1, 2"), qsTr("to Fly, to Bench; not during a run"),
        qsTr("Tab"), qsTr("to the next button or control; arrow keys move it")
    ]

    readonly property list<string> placeKeys: place === 1 ? benchKeys : flyKeys

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
                model: sheet.placeKeys.length / 2
                KeyLine {
                    required property int index
                    width: column.width
                    keyName: sheet.placeKeys[index * 2]
                    does: sheet.placeKeys[index * 2 + 1]
                }
            }
            Item { width: 1; height: Tokens.gap8 }
            PlainText {
                visible: sheet.place === 0 && sheet.controlKeys.count > 0
                text: qsTr("On-screen controls")
                font.weight: Font.DemiBold
            }
            Repeater {
                model: sheet.place === 0 ? sheet.controlKeys : null
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
