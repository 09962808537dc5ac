import QtQuick
import Flowhand

/// A control, drawn as it is built. The same drawing serves a step, the set-up check and the on-screen cockpit.
Item {
    id: drawing

    required property ControlState control
    property bool wanted: false
    property real wantedLow: 0
    property real wantedHigh: 0
    property list<int> wantedPlaces
    property int wordSize: Tokens.quietSize

    function valueAt(x: real, y: real): real {
        const face = loader.item as ControlFace;
        return face ? face.valueAt(x, y) : 0;
    }

    function faceOf(kind: int): Component {
        switch (kind) {
        case ControlState.GatedLever: return gates;
        case ControlState.Switch: return rocker;
        case ControlState.Selector: return selector;
        case ControlState.Button: return button;
        case ControlState.Wheel: return wheel;
        default: return slide;
        }
    }

    implicitWidth: loader.implicitWidth
    implicitHeight: loader.implicitHeight

    Loader {
        id: loader
        anchors.fill: parent
        sourceComponent: drawing.faceOf(drawing.control.kind)
    }
    Component {
        id: slide
        SlideFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedLow: drawing.wantedLow
            wantedHigh: drawing.wantedHigh
            wordSize: drawing.wordSize
        }
    }
    Component {
        id: wheel
        WheelFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedLow: drawing.wantedLow
            wantedHigh: drawing.wantedHigh
            wordSize: drawing.wordSize
        }
    }
    Component {
        id: gates
        GateFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedPlaces: drawing.wantedPlaces
            wordSize: drawing.wordSize
        }
    }
    Component {
        id: selector
        SelectorFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedPlaces: drawing.wantedPlaces
            wordSize: drawing.wordSize
        }
    }
    Component {
        id: rocker
        SwitchFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedPlaces: drawing.wantedPlaces
            wordSize: drawing.wordSize
        }
    }
    Component {
        id: button
        ButtonFace {
            control: drawing.control
            wanted: drawing.wanted
            wantedPlaces: drawing.wantedPlaces
            wordSize: drawing.wordSize
        }
    }
}
