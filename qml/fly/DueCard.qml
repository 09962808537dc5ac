import QtQuick
import QtQuick.Layouts
import Flowhand

/// The due step, readable from a metre, with its control as it stands and as it should.
Card {
    id: card

    required property RunPresenter run
    property bool demonstration: false
    property bool held: false
    /// The ground is shown beside the card.
    property bool withGround: false

    readonly property int targetCount: run.targets.count
    /// Little room: what only explains is left out.
    readonly property bool isTight: height < 260 * Tokens.textScale
    readonly property int largest: Tokens.dueSize(Window.height)
    readonly property int smallest: Tokens.smallestDueSize(Window.height)
    /// Two lines at the largest size, or else at the smallest.
    readonly property bool isLong: run.dueTitle.length * largest * 0.56 > words.width * 1.8
    readonly property string lead: {
        if (run.saying !== "")
            return qsTr("%1: “%2”").arg(run.sayingBy).arg(run.saying);
        if (held)
            return qsTr("Held: this comes when you go on");
        if (!run.hasDue)
            return run.stepsOver < run.stepsAll ? qsTr("Nothing is due yet") : qsTr("Every step is over");
        if (!run.dueOwn)
            return qsTr("The %1 does this now").arg(run.dueWho);
        return demonstration ? qsTr("Scripted hands do this now") : run.dueSeen ? qsTr("Seen. Leave it there.") : qsTr("Your step, now");
    }

    clip: true

    ColumnLayout {
        id: words
        anchors { left: parent.left; top: parent.top; bottom: parent.bottom; right: drawings.left; margins: Tokens.gap24 }
        anchors.topMargin: card.isTight ? Tokens.gap12 : Tokens.gap24
        anchors.bottomMargin: Tokens.gap12
        spacing: card.isTight ? Tokens.gap4 : Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: card.lead
            font.pixelSize: card.run.saying !== "" ? Tokens.strongSize * 1.2 : Tokens.strongSize
            color: card.run.saying !== "" ? Tokens.info : Tokens.quiet
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.fillWidth: true
            text: card.run.hasDue ? card.run.dueTitle : card.run.nextTitle !== "" ? qsTr("Next: %1").arg(card.run.nextTitle) : ""
            font.pixelSize: !card.run.hasDue ? Tokens.titleSize * 1.4 : card.isLong || card.isTight ? card.smallest : card.largest
            font.weight: Font.DemiBold
            lineHeight: 0.9
            color: card.run.dueOwn || !card.run.hasDue ? Tokens.text : Tokens.quiet
            elide: Text.ElideRight
            maximumLineCount: card.isTight ? 2 : 3
        }
        TimeLine {
            visible: card.run.hasDue && card.run.dueOwn
            Layout.fillWidth: true
            share: card.run.dueShare
            timely: card.run.timelyShare
        }
        PlainText {
            visible: card.run.dueReply !== ""
            Layout.fillWidth: true
            text: qsTr("Answer: “%1”").arg(card.run.dueReply)
            font.pixelSize: Tokens.titleSize
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        // Not of the layout itself: Qt 6.4 lays out lines that are gone where the drawings beside it change their size.
        Column {
            visible: visibleChildren.length > 0
            Layout.fillWidth: true
            spacing: words.spacing
            Repeater {
                model: card.run.targets
                TargetLine {
                    width: parent?.width ?? 0
                    visible: control.kind !== ControlState.Button && (!card.isTight || card.targetCount === 1)
                    size: card.targetCount > 1 ? Tokens.titleSize : Math.round(Tokens.titleSize * 1.25)
                    labelled: card.targetCount > 1 || !wanted
                }
            }
        }
        Item {
            Layout.fillWidth: true
            Layout.fillHeight: true
            PlainText {
                width: parent.width
                visible: !card.isTight && parent.height >= implicitHeight
                text: card.run.dueWhy
                color: Tokens.quiet
            }
        }
        VerdictLine {
            Layout.fillWidth: true
            verdict: card.run.verdict
            word: card.run.verdictWord
            title: card.run.verdictTitle
        }
    }
    Row {
        id: drawings
        anchors { right: parent.right; top: parent.top; bottom: parent.bottom; margins: Tokens.gap24 }
        spacing: Tokens.gap24
        LineView {
            visible: card.targetCount === 0 && card.run.hasLine && !card.withGround
            height: drawings.height
            run: card.run
        }
        Repeater {
            model: card.run.targets
            TargetDrawing {
                height: drawings.height
                isCrowded: card.targetCount > 2
            }
        }
    }
}
