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

    implicitWidth: Math.max(drawing.implicitWidth, control.flat ? caption.implicitWidth : widest.width, 44)
    implicitHeight: 160
    enabled: control.movable
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
    Keys.onSpacePressed: event => {
        if (control.kind === ControlState.Switch)
            panel.put(control, control.value > 0.5 ? 0 : 1);
        else if (control.kind === ControlState.Button)
            panel.put(control, 1);
        else
            event.accepted = false;
    }
    Keys.onReleased: event => {
        event.accepted = event.key === Qt.Key_Space && control.kind === ControlState.Button;
        if (event.accepted)
            panel.letGo(control);
    }

    Grid {
        id: caption
        anchors.horizontalCenter: parent.horizontalCenter
        columns: screen.control.flat ? 2 : 1
        columnSpacing: Tokens.gap8
        horizontalItemAlignment: Grid.AlignHCenter
        PlainText {
            // Two lines at most: "Thrust" above "1" leaves levers close together, as they are.
            width: screen.control.flat ? implicitWidth : screen.width + 4
            height: screen.control.flat ? implicitHeight : 2 * metrics.height
            text: screen.control.shortLabel
            font.pixelSize: Tokens.quietSize
            lineHeight: 0.9
            horizontalAlignment: Text.AlignHCenter
            verticalAlignment: Text.AlignBottom
            wrapMode: screen.control.flat ? Text.NoWrap : Text.WordWrap
            maximumLineCount: 2
            Accessible.ignored: true
        }
        PlainText {
            text: Tokens.keyNames(screen.control.keys)
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
    TextMetrics {
        id: widest
        font.family: Tokens.family
        font.pixelSize: Tokens.quietSize
        text: screen.control.shortLabel.split(" ")[0]
    }
    FontMetrics {
        id: metrics
        font.family: Tokens.family
        font.pixelSize: Tokens.quietSize
    }
    ControlDrawing {
        id: drawing
        control: screen.control
        anchors.top: caption.bottom
        anchors.topMargin: screen.control.flat ? 0 : 4
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
