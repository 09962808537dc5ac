import QtQuick
import Flowhand

/// The whole run: where the lanes are in it, its steps and losses. Dragging moves the lanes along it.
Item {
    id: strip

    required property ReviewTimeline timeline
    required property LaneInk ink

    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The whole run, with its steps and losses")

    RunRibbon {
        anchors.fill: parent
        timeline: strip.timeline
        ink: strip.ink
    }
    Rectangle {
        x: strip.timeline.now / Math.max(strip.timeline.length, 0.001) * strip.width - 1
        width: 2
        height: parent.height
        color: Tokens.text
    }
    MouseArea {
        anchors.fill: parent
        function go(x: real): void {
            const time = Math.max(0, Math.min(1, x / width)) * strip.timeline.length;
            strip.timeline.centre(time);
            strip.timeline.hold(time);
        }
        onPressed: mouse => go(mouse.x)
        onPositionChanged: mouse => go(mouse.x)
        onWheel: wheel => strip.timeline.zoom(Math.pow(1.0015, wheel.angleDelta.y), 0.5)
    }
}
