import QtQuick
import Flowhand

/// A wheel that is turned either side of its centre: an arc, a mark at the centre, and where it stands.
ControlFace {
    id: face

    /// Half of the arc's opening, in degrees.
    readonly property real reach: 120
    readonly property real radius: Math.min(width, height) / 2 - 8

    function angleOf(value: real): real {
        return -reach + 2 * reach * shareOf(value);
    }

    function valueAt(x: real, y: real): real {
        const angle = Math.atan2(x - width / 2, height / 2 - y) * 180 / Math.PI;
        return control.lowest + span * Math.max(0, Math.min(1, (angle + reach) / (2 * reach)));
    }

    implicitWidth: 82
    implicitHeight: 82

    ArcLine {
        anchors.fill: parent
        from: -face.reach
        to: face.reach
        radius: face.radius
        thickness: 10
        color: Tokens.line
    }
    ArcLine {
        anchors.fill: parent
        from: -face.reach
        to: face.reach
        radius: face.radius
        thickness: 8
        color: Tokens.sunken
    }
    ArcLine {
        anchors.fill: parent
        visible: face.wanted
        from: face.angleOf(face.wantedLow)
        to: Math.max(face.angleOf(face.wantedLow) + 2, face.angleOf(face.wantedHigh))
        radius: face.radius
        thickness: 5
        color: Tokens.accent
    }
    Item {
        anchors.fill: parent
        rotation: face.angleOf(0)
        Rectangle {
            x: parent.width / 2 - 1
            y: parent.height / 2 - face.radius + 8
            width: 2
            height: 8
            color: Tokens.line
        }
    }
    Item {
        anchors.fill: parent
        rotation: face.angleOf(face.control.known ? face.control.value : 0)
        Rectangle {
            x: (parent.width - width) / 2
            y: parent.height / 2 - face.radius - 8
            width: Math.max(10, face.radius * 0.22)
            height: 22
            radius: 4
            antialiasing: true
            color: face.control.known ? Tokens.text : Tokens.ground
            border.width: face.control.known ? 0 : 2
            border.color: Tokens.line
        }
    }
    PlainText {
        anchors.centerIn: parent
        text: face.control.known ? face.control.valueText : "?"
        font.pixelSize: face.wordSize
        font.weight: Font.DemiBold
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
}
