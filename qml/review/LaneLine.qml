import QtQuick
import Flowhand

/// One lane: its name, what it says at the held time and at A and B, and its picture.
Item {
    id: lane

    required property int rowId
    required property int kind
    required property string label
    required property string value
    required property string marked
    required property int lines
    required property RunReview run
    required property LaneInk ink
    required property real nameWidth
    required property real signalHeight
    readonly property bool isSignal: kind === ReviewTimeline.SignalLane

    height: isSignal ? Math.max(signalHeight, marked !== "" ? names.implicitHeight + 6 : 0) : Math.max(2, lines) * (Tokens.quietSize + 9)
    Accessible.role: Accessible.Row
    Accessible.name: qsTr("%1: %2").arg(label).arg(value)

    Rectangle {
        width: parent.width
        height: 1
        color: Tokens.line
        opacity: 0.35
    }
    Column {
        id: names
        y: 3
        width: lane.nameWidth - Tokens.gap8
        PlainText {
            width: parent.width
            text: lane.label
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            width: parent.width
            text: lane.value
            font.pixelSize: lane.isSignal ? Tokens.bodySize : Tokens.quietSize
            font.weight: lane.isSignal ? Font.DemiBold : Font.Normal
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            visible: text !== ""
            width: parent.width
            text: lane.marked
            font.pixelSize: Tokens.quietSize
            color: Tokens.info
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
    }
    Loader {
        id: picture
        x: lane.nameWidth
        y: 2
        width: parent.width - x
        height: parent.height - 3
        sourceComponent: lane.isSignal ? plot : bars
    }
    Component {
        id: plot
        SignalPlot {
            timeline: lane.run.timeline
            ink: lane.ink
            signalId: lane.rowId
        }
    }
    Component {
        id: bars
        BarLane {
            timeline: lane.run.timeline
            ink: lane.ink
            kind: lane.kind
        }
    }
    ScrubArea {
        anchors.fill: picture
        timeline: lane.run.timeline
        onClicked: mouse => {
            const step = (picture.item as BarLane)?.stepAt(mouse.x, mouse.y) ?? -1;
            if (step >= 0 && lane.kind === ReviewTimeline.Steps)
                lane.run.chooseStep(step);
        }
    }
}
