import QtQuick
import Flowhand

/// What the drawings of all controls have in common: the control they show and where it has to go. A face only draws;
/// `valueAt` tells whoever drags it which value lies at a point.
Item {
    id: face

    required property ControlState control
    property bool wanted: false
    property real wantedLow: 0
    property real wantedHigh: 0
    property list<int> wantedPlaces
    /// Type size of what is written on the control.
    property int wordSize: Tokens.quietSize

    readonly property bool upright: control.upright
    readonly property real span: control.highest - control.lowest
    /// 0..1 from the lowest value to the highest.
    readonly property real share: shareOf(control.value)

    function shareOf(value: real): real {
        return span > 0 ? Math.max(0, Math.min(1, (value - control.lowest) / span)) : 0;
    }

    function isWanted(place: int): bool {
        for (let i = 0; i < wantedPlaces.length; ++i)
            if (wanted && wantedPlaces[i] === place)
                return true;
        return false;
    }

    /// Overridden by each face.
    function valueAt(x: real, y: real): real {
        return control.value;
    }
}
