import QtQuick
import Flowhand

/// A rocker with its two words; the side that is in is filled.
ControlFace {
    id: face

    function valueAt(x: real, y: real): real {
        return x < width / 2 ? 0 : 1;
    }

    implicitWidth: 88
    implicitHeight: 24

    Rectangle {
        anchors.fill: parent
        radius: Tokens.corner
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
    }
    Repeater {
        model: [qsTr("off"), qsTr("on")]
        Item {
            id: side
            required property int index
            required property string modelData
            readonly property bool isHere: face.control.known && face.control.value === index
            x: index * face.width / 2
            width: face.width / 2
            height: face.height
            Rectangle {
                anchors.fill: parent
                anchors.margins: 2
                radius: 4
                color: side.isHere ? Tokens.text : "transparent"
                border.width: face.isWanted(side.index) ? 2 : 0
                border.color: Tokens.accent
            }
            PlainText {
                anchors.centerIn: parent
                text: face.control.known ? side.modelData : side.index === 0 ? "?" : ""
                font.pixelSize: face.wordSize
                font.weight: side.isHere || face.isWanted(side.index) ? Font.DemiBold : Font.Normal
                color: side.isHere ? Tokens.raised : face.isWanted(side.index) ? Tokens.accent : Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
}
