import QtQuick
import Flowhand

/// A push button: filled while it is pressed.
ControlFace {
    id: face

    function valueAt(x: real, y: real): real {
        return 1;
    }

    implicitWidth: 88
    implicitHeight: 24

    Rectangle {
        anchors.centerIn: parent
        width: Math.min(parent.width, parent.height * 3.4)
        height: parent.height
        radius: height / 2
        color: face.control.value > 0.5 ? Tokens.text : Tokens.sunken
        border.width: face.wanted ? 2 : 1
        border.color: face.wanted ? Tokens.accent : Tokens.line
        PlainText {
            anchors.centerIn: parent
            text: face.control.value > 0.5 ? qsTr("pressed") : qsTr("press")
            font.pixelSize: face.wordSize
            font.weight: face.wanted ? Font.DemiBold : Font.Normal
            color: face.control.value > 0.5 ? Tokens.raised : face.wanted ? Tokens.accent : Tokens.quiet
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
}
