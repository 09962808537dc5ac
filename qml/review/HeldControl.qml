import QtQuick
import Flowhand

/// A control as it stood; not to be moved.
Item {
    id: held

    required property ControlState control

    implicitWidth: Math.max(drawing.implicitWidth, control.flat ? name.implicitWidth : Math.min(name.implicitWidth, 64), 44)
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1: %2").arg(control.label).arg(control.valueText)

    PlainText {
        id: name
        width: held.control.flat ? implicitWidth : parent.width
        text: held.control.shortLabel
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
        horizontalAlignment: Text.AlignHCenter
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    ControlDrawing {
        id: drawing
        anchors { top: name.bottom; topMargin: 2; bottom: parent.bottom; horizontalCenter: parent.horizontalCenter }
        width: implicitWidth
        control: held.control
    }
}
