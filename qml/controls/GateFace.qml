import QtQuick
import Flowhand

/// A lever with gates: a slot, a mark and a word at each gate, and the handle.
ControlFace {
    id: face

    readonly property int gates: control.positions.length
    readonly property real handleSize: Math.max(12, Math.min(26, height * 0.11))
    readonly property real slotX: Math.min(28, 16 * wordSize / Tokens.quietSize)
    /// Above and below the outer gates, so that handle and word have their place.
    readonly property real room: Math.max(handleSize, 1.5 * wordSize)
    readonly property real stretch: gates > 1 ? (height - room) / (gates - 1) : 0
    readonly property bool between: control.known && control.value < 0

    function gateY(gate: real): real {
        return room / 2 + gate * stretch;
    }

    function valueAt(x: real, y: real): real {
        return Math.max(0, Math.min(gates - 1, Math.round((y - room / 2) / stretch)));
    }

    implicitWidth: slotX * 2 + 8 + widest.advanceWidth
    implicitHeight: 120

    TextMetrics {
        id: widest
        font.family: Tokens.family
        font.pixelSize: face.wordSize
        font.weight: Font.DemiBold
        text: face.control.longestPosition
    }
    Rectangle {
        x: face.slotX - width / 2
        width: 8
        height: parent.height
        radius: 4
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
    }
    Repeater {
        model: face.gates
        Item {
            id: gate
            required property int index
            readonly property bool isWanted: face.isWanted(index)
            readonly property bool isHere: face.control.known && face.control.value === index
            y: face.gateY(index)
            width: face.width
            Rectangle {
                x: face.slotX - width / 2
                y: -height / 2
                width: Math.min(26, face.slotX * 1.6)
                height: gate.isWanted ? 3 : 1
                color: gate.isWanted ? Tokens.accent : Tokens.line
            }
            Rectangle {
                visible: gate.isWanted
                x: word.x - 6
                y: -height / 2
                width: word.width + 12
                height: word.height + 2
                radius: Tokens.corner
                color: "transparent"
                border.width: 2
                border.color: Tokens.accent
            }
            PlainText {
                id: word
                x: face.slotX * 2 + 4
                y: -height / 2
                text: face.control.positions[gate.index]
                font.pixelSize: face.wordSize
                font.weight: gate.isHere || gate.isWanted ? Font.DemiBold : Font.Normal
                color: gate.isWanted ? Tokens.accent : gate.isHere ? Tokens.text : Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
    Rectangle {
        readonly property real gate: face.control.known && !face.between ? face.control.value : (face.gates - 1) / 2
        x: face.slotX - width / 2
        y: face.gateY(gate) - height / 2
        width: Math.min(40, face.slotX * 2 - 2)
        height: face.handleSize
        radius: 4
        color: face.control.known && !face.between ? Tokens.text : Tokens.ground
        border.width: face.control.known && !face.between ? 0 : 2
        border.color: Tokens.line
        PlainText {
            anchors.centerIn: parent
            visible: !face.control.known || face.between
            text: face.between ? "↕" : "?"
            font.pixelSize: Math.min(Tokens.quietSize, face.handleSize - 2)
            Accessible.ignored: true
        }
    }
}
