import QtQuick
import Flowhand

/// A dial with words round it.
ControlFace {
    id: face

    readonly property int places: control.positions.length
    readonly property real radius: Math.min(width * 0.16, height * 0.28)
    // The first words, on the left, are the short ones: off, low.
    readonly property real middleX: width * 0.42
    readonly property real middleY: height / 2

    /// Degrees clockwise from the top; the words lie in an arc that leaves the bottom free.
    function angleOf(place: real): real {
        return places > 1 ? -110 + 220 * place / (places - 1) : 0;
    }

    function valueAt(x: real, y: real): real {
        const angle = Math.atan2(x - middleX, middleY - y) * 180 / Math.PI;
        return Math.max(0, Math.min(places - 1, Math.round((angle + 110) / 220 * (places - 1))));
    }

    implicitWidth: 140
    implicitHeight: 120

    Rectangle {
        x: face.middleX - face.radius
        y: face.middleY - face.radius
        width: face.radius * 2
        height: width
        radius: face.radius
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
        Rectangle {
            visible: face.control.known && face.control.value >= 0
            x: face.radius - width / 2
            y: 3
            width: 5
            height: face.radius - 3
            radius: 2
            color: Tokens.text
            transformOrigin: Item.Bottom
            rotation: face.angleOf(face.control.value)
        }
        PlainText {
            anchors.centerIn: parent
            visible: !face.control.known
            text: "?"
            Accessible.ignored: true
        }
    }
    Repeater {
        model: face.places
        Item {
            id: place
            required property int index
            readonly property real angle: face.angleOf(index) * Math.PI / 180
            readonly property bool isHere: face.control.known && face.control.value === index
            readonly property bool isWanted: face.isWanted(index)
            x: face.middleX + Math.sin(angle) * (face.radius + 8)
            y: face.middleY - Math.cos(angle) * (face.radius + 8)
            Rectangle {
                visible: place.isWanted
                x: word.x - 5
                y: word.y - 1
                width: word.width + 10
                height: word.height + 2
                radius: Tokens.corner
                color: "transparent"
                border.width: 2
                border.color: Tokens.accent
            }
            PlainText {
                id: word
                x: Math.sin(place.angle) < -0.1 ? -width : Math.sin(place.angle) > 0.1 ? 0 : -width / 2
                y: -height / 2 - Math.cos(place.angle) * height / 2
                text: face.control.positions[place.index]
                font.pixelSize: face.wordSize
                font.weight: place.isHere || place.isWanted ? Font.DemiBold : Font.Normal
                color: place.isWanted ? Tokens.accent : place.isHere ? Tokens.text : Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
}
