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

    readonly property bool isFlat: control.kind === ControlState.Switch || control.kind === ControlState.Button || !control.upright && control.kind !== ControlState.Wheel
    readonly property bool isRound: control.kind === ControlState.Wheel || control.kind === ControlState.Selector

    width: isFlat ? 200 : isRound ? Math.min(height, 240) : control.kind === ControlState.GatedLever ? 140 : 72

    ControlDrawing {
        anchors.centerIn: parent
        width: parent.width
        height: target.isFlat ? 64 : target.isRound ? Math.min(parent.height, 240) : parent.height
        control: target.control
        wanted: target.wanted
        wantedLow: target.low
        wantedHigh: target.high
        wantedPlaces: target.places
        wordSize: Tokens.strongSize
    }
}
