import QtQuick
import QtQuick.Templates as T
import Flowhand

/// A control of the on-screen cockpit: dragged by mouse or touch, moved by its own keys, or with Tab and the arrow
/// keys.
T.Control {
    id: screen

    required property ControlState control
    required property ScreenPanel panel

    readonly property bool isNumber: control.highest > control.lowest

    implicitWidth: Math.max(drawing.implicitWidth, label.implicitWidth, 44)
    implicitHeight: drawing.implicitHeight + caption.height + 4
    focusPolicy: Qt.TabFocus
    Accessible.role: isNumber ? Accessible.Slider : control.kind === ControlState.Button ? Accessible.Button
        : control.kind === ControlState.Switch ? Accessible.CheckBox : Accessible.ComboBox
    Accessible.name: control.label
    Accessible.description: qsTr("%1. Arrow keys move it.").arg(control.valueText)

    // Up is up on screen: more of a number, the gate above of a lever with gates.
    Keys.onUpPressed: panel.nudge(control, isNumber ? 1 : -1)
    Keys.onDownPressed: panel.nudge(control, isNumber ? -1 : 1)
    Keys.onRightPressed: panel.nudge(control, 1)
    Keys.onLeftPressed: panel.nudge(control, -1)

    Column {
        id: caption
        width: parent.width
        PlainText {
            id: label
            anchors.horizontalCenter: parent.horizontalCenter
            text: screen.control.label
            font.pixelSize: Tokens.quietSize
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
        PlainText {
            anchors.horizontalCenter: parent.horizontalCenter
            text: screen.control.keys
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
    ControlDrawing {
        id: drawing
        control: screen.control
        anchors.top: caption.bottom
        anchors.topMargin: 4
        anchors.bottom: parent.bottom
        anchors.horizontalCenter: parent.horizontalCenter
        width: implicitWidth
        FocusFrame { shown: screen.visualFocus }
        MouseArea {
            anchors.fill: parent
            preventStealing: true
            onPressed: mouse => screen.panel.put(screen.control, drawing.valueAt(mouse.x, mouse.y))
            onPositionChanged: mouse => screen.panel.put(screen.control, drawing.valueAt(mouse.x, mouse.y))
            onReleased: screen.panel.letGo(screen.control)
            onCanceled: screen.panel.letGo(screen.control)
        }
    }
}
