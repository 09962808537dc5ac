import QtQuick
import Flowhand

/// A number along a slot: lever and toe brake upright, rudder pedals and wheel of a yoke from side to side.
ControlFace {
    id: face

    readonly property real handleSize: Math.max(14, Math.min(28, (upright ? height : width) * 0.12))
    readonly property real slotSize: Math.max(8, Math.min(14, (upright ? width : height) * 0.2))
    readonly property real way: (upright ? height : width) - handleSize

    function along(part: real): real {
        return upright ? handleSize / 2 + (1 - part) * way : handleSize / 2 + part * way;
    }

    function valueAt(x: real, y: real): real {
        const part = upright ? 1 - (y - handleSize / 2) / way : (x - handleSize / 2) / way;
        return control.lowest + Math.max(0, Math.min(1, part)) * span;
    }

    implicitWidth: upright ? 40 : 96
    implicitHeight: upright ? 120 : 24

    Rectangle {
        anchors.centerIn: parent
        width: face.upright ? face.slotSize : parent.width
        height: face.upright ? parent.height : face.slotSize
        radius: face.slotSize / 2
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
    }
    Rectangle {
        id: band
        readonly property real begin: face.along(face.shareOf(face.upright ? face.wantedHigh : face.wantedLow))
        readonly property real end: face.along(face.shareOf(face.upright ? face.wantedLow : face.wantedHigh))
        visible: face.wanted
        x: face.upright ? parent.width / 2 - face.slotSize : begin - 3
        y: face.upright ? begin - 3 : parent.height / 2 - face.slotSize
        width: face.upright ? face.slotSize * 2 : Math.max(6, end - begin + 6)
        height: face.upright ? Math.max(6, end - begin + 6) : face.slotSize * 2
        radius: Tokens.corner
        color: "transparent"
        border.width: 2
        border.color: Tokens.accent
    }
    Rectangle {
        visible: face.control.lowest < 0 && face.control.highest > 0
        width: face.upright ? face.slotSize + 10 : 1
        height: face.upright ? 1 : face.slotSize + 10
        x: face.upright ? (parent.width - width) / 2 : face.along(face.shareOf(0))
        y: face.upright ? face.along(face.shareOf(0)) : (parent.height - height) / 2
        color: Tokens.line
    }
    Rectangle {
        readonly property real at: face.along(face.control.known ? face.share : face.shareOf(0))
        width: face.upright ? Math.min(parent.width, face.handleSize * 2) : face.handleSize
        height: face.upright ? face.handleSize : Math.min(parent.height, face.handleSize * 2)
        x: face.upright ? (parent.width - width) / 2 : at - width / 2
        y: face.upright ? at - height / 2 : (parent.height - height) / 2
        radius: 4
        color: face.control.known ? Tokens.text : Tokens.ground
        border.width: face.control.known ? 0 : 2
        border.color: Tokens.line
        PlainText {
            anchors.centerIn: parent
            visible: !face.control.known
            text: "?"
            font.pixelSize: Math.min(Tokens.quietSize, face.handleSize - 2)
            Accessible.ignored: true
        }
    }
}
