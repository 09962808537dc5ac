import QtQuick
import Flowhand

/// All keys, beside the place rather than over it.
Card {
    id: sheet

    required property RowModel controlKeys
    /// 0 Fly, 1 Bench, 2 Review.
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
        qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Ctrl 1, 2, 3"), qsTr("to Fly, to Bench, to Review"),
        qsTr("Tab"), qsTr("to the next button or control")
    ]
    readonly property list<string> reviewKeys: [
        qsTr("F1"), qsTr("show or hide the keys"), qsTr("Return"), qsTr("go through the chosen run"), "F", qsTr("search in the list; fit the whole run in its timeline"),
        qsTr("R, T, Del"), qsTr("reference, tag, delete, in the list"), "Z, D", qsTr("take a deletion back; deleted runs"),
        qsTr("Esc"), qsTr("back to the list"), qsTr("F2 to F8"), qsTr("deviations, steps, notes, compare, signals, the run"),
        "1 … 9", qsTr("to that deviation; two figures where there are more"), "↑ ↓", qsTr("the next one of the list"),
        qsTr("PgUp PgDn"), qsTr("deviation before, next"), "J K", qsTr("step before, next"), qsTr(", and ."), qsTr("visible change before, next"),
        "← →", qsTr("hold an earlier, a later time; farther with Shift"), qsTr("Home End"), qsTr("to the start, to the end"),
        "+ −", qsTr("zoom at the held time"), "A B C", qsTr("set A, set B, clear both"),
        qsTr("Space"), qsTr("play, stop"), "S D", qsTr("slower, faster"), "L", qsTr("loop from A to B, or what is shown"),
        "N", qsTr("a note at the held time; Return keeps it"), "Q O P", qsTr("account, objective, what to practise"),
        "U W", qsTr("ruling, cause of what is chosen"), "X", qsTr("compare with another run"), "E", qsTr("write the debrief down"),
        "V", qsTr("show or hide the cockpit"), qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Ctrl 1, 2, 3"), qsTr("to Fly, to Bench, to Review")
    ]
    readonly property list<string> flyKeys: [
        qsTr("F1"), qsTr("show or hide the keys"), qsTr("Return"), qsTr("the main button"),
        qsTr("Space"), qsTr("reply"), qsTr("F2"), qsTr("hold, and go on"), qsTr("F3"), qsTr("repeat the step"),
        qsTr("F4"), qsTr("show or hide the on-screen controls"), qsTr("F7"), qsTr("jump to another step"), qsTr("F8"), qsTr("stop the run"), qsTr("F10"), qsTr("a note at this moment; Return keeps it"), qsTr("F9"), qsTr("sound on, quiet, off"), qsTr("Esc"), qsTr("back to the flows, between runs"),
        qsTr("Page"), qsTr("Page Up, Page Down: another aircraft, or its scenarios"),
        qsTr("Ctrl 1, 2, 3"), qsTr("to Fly, to Bench, to Review; not during a run"),
        qsTr("Tab"), qsTr("to the next button or control; arrow keys move it")
    ]

    readonly property list<string> placeKeys: place === 1 ? benchKeys : place === 2 ? reviewKeys : flyKeys

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
