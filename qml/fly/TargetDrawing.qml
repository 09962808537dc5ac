import QtQuick
import Flowhand

/// The drawing of a control with its target, as large as the card allows.
Item {
    id: target

    required property ControlState control
    required property bool wanted
    required property real low
    required property real high
    required property list<int> places
    /// Several drawings share the card.
    property bool isCrowded: false

    readonly property bool isRound: control.kind === ControlState.Wheel || control.kind === ControlState.Selector
    readonly property real roundSize: isCrowded ? 130 : 260

    width: control.flat ? (isCrowded ? 120 : 200) : isRound ? Math.min(height * 1.1, roundSize)
        : control.kind === ControlState.GatedLever ? 120 * Tokens.textScale : 64

    ControlDrawing {
        anchors.centerIn: parent
        width: parent.width
        height: target.control.flat ? 60 : target.isRound ? Math.min(parent.height, target.roundSize) : parent.height
        control: target.control
        wanted: target.wanted
        wantedLow: target.low
        wantedHigh: target.high
        wantedPlaces: target.places
        wordSize: Tokens.strongSize
    }
}
