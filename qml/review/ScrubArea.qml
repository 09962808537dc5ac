import QtQuick
import Flowhand

/// Over a picture of the timeline: the left button holds a time, the others pan, the wheel zooms at the pointer and,
/// with Shift or sideways, pans.
MouseArea {
    id: area

    required property ReviewTimeline timeline
    property real last: 0

    acceptedButtons: Qt.LeftButton | Qt.MiddleButton | Qt.RightButton
    preventStealing: true
    onPressed: mouse => {
        last = mouse.x;
        if (mouse.button === Qt.LeftButton)
            timeline.scrub(mouse.x / width);
    }
    onPositionChanged: mouse => {
        if (pressedButtons & Qt.LeftButton)
            timeline.scrub(Math.max(0, Math.min(1, mouse.x / width)));
        else
            timeline.pan((last - mouse.x) / width);
        last = mouse.x;
    }
    onWheel: wheel => {
        const sideways = wheel.modifiers & Qt.ShiftModifier ? wheel.angleDelta.y : wheel.angleDelta.x;
        if (sideways !== 0)
            timeline.pan(-sideways / 1200);
        else
            timeline.zoom(Math.pow(1.0015, wheel.angleDelta.y), wheel.x / width);
    }
}
