import QtQuick
import Flowhand

/// The run along its time: a lane for the steps, the words, and each chosen signal. One held time is read out across
/// all of them.
Card {
    id: card

    required property RunReview run
    required property LaneInk ink
    readonly property ReviewTimeline timeline: run.timeline
    readonly property real nameWidth: Math.min(200 * Tokens.textScale, width * 0.28)
    readonly property real plotWidth: width - nameWidth - 2 * Tokens.gap12

    function xOf(time: real): real {
        return nameWidth + Tokens.gap12 + (time - timeline.from) / Math.max(timeline.to - timeline.from, 0.001) * plotWidth;
    }

    function isSeen(time: real): bool {
        return time >= timeline.from && time <= timeline.to;
    }

    TimeRuler {
        id: ruler
        x: card.nameWidth + Tokens.gap12
        y: Tokens.gap8
        width: card.plotWidth
        height: Tokens.quietSize + 12
        timeline: card.timeline
        ink: card.ink
        ScrubArea {
            anchors.fill: parent
            timeline: card.timeline
        }
    }
    PlainText {
        x: Tokens.gap12
        y: Tokens.gap8
        width: card.nameWidth - Tokens.gap8
        height: ruler.height
        verticalAlignment: Text.AlignVCenter
        text: qsTr("Held: %1").arg(card.timeline.nowText)
        font.weight: Font.DemiBold
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    ListView {
        id: list
        anchors { left: parent.left; right: parent.right; top: ruler.bottom; bottom: parent.bottom; leftMargin: Tokens.gap12; topMargin: 2; bottomMargin: Tokens.gap8 }
        clip: true
        keyNavigationEnabled: false
        interactive: false
        model: card.timeline.lanes
        ThinScrollBar.vertical: ThinScrollBar { interactive: true }
        delegate: LaneLine {
            width: list.width - Tokens.gap12
            nameWidth: card.nameWidth
            run: card.run
            ink: card.ink
            signalHeight: Math.max(46 * Tokens.textScale, Math.min(96, (list.height - 150) / 5))
        }
    }
    TimeMark {
        visible: card.timeline.markA >= 0 && card.isSeen(card.timeline.markA)
        x: card.xOf(card.timeline.markA)
        name: "A"
    }
    TimeMark {
        visible: card.timeline.markB >= 0 && card.isSeen(card.timeline.markB)
        x: card.xOf(card.timeline.markB)
        name: "B"
    }
    Rectangle {
        visible: card.isSeen(card.timeline.now)
        x: Math.round(card.xOf(card.timeline.now)) - 1
        y: ruler.y + ruler.height - 5
        width: 2
        height: parent.height - y - Tokens.gap8
        color: Tokens.text
    }
}
