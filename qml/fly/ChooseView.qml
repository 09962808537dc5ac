import QtQuick
import QtQuick.Layouts
import Flowhand

/// The flows or the scenarios of an aircraft as cards, in the order of the flight.
StageView {
    id: view

    property int chosenRow: 0
    readonly property bool isEditing: fly.feed.editing || fly.start.editing
    signal rowChosen(row: int)

    function primaryAction(): bool {
        if (fly.start.editing)
            return leaveCard();
        const canBegin = fly.flows.count > 0 && !isEditing;
        if (canBegin && fly.demonstrationFirst && (repeater.itemAt(chosenRow) as FlowCard).demonstrated)
            fly.demonstrate(chosenRow);
        else if (canBegin)
            fly.startFlow(chosenRow);
        return canBegin;
    }

    function leaveCard(): bool {
        const wasEditing = isEditing;
        fly.feed.editing = false;
        fly.start.editing = false;
        view.forceActiveFocus();
        return wasEditing;
    }

    function step(by: int): void {
        const row = chosenRow + by;
        if (row >= 0 && row < fly.flows.count && !isEditing)
            rowChosen(row);
    }

    function chooseGroup(group: int): void {
        if (group >= 0 && group < fly.groups.count && !isEditing)
            fly.group = group;
    }

    onChosenRowChanged: flick.revealChosen()
    Keys.onRightPressed: step(1)
    Keys.onLeftPressed: step(-1)
    Keys.onDownPressed: step(cards.columns)
    Keys.onUpPressed: step(-cards.columns)
    Keys.onEscapePressed: event => event.accepted = leaveCard()
    Keys.onPressed: event => {
        const by = event.key === Qt.Key_PageDown ? 1 : event.key === Qt.Key_PageUp ? -1 : 0;
        if (by !== 0)
            chooseGroup(fly.group + by);
        event.accepted = by !== 0;
    }

    ActionButton {
        id: measured
        visible: false
        text: "0"
    }
    Loader {
        active: view.fly.feed.editing
        anchors { left: parent.left; right: parent.right; top: parent.top; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        sourceComponent: FeedCard { feed: view.fly.feed }
    }
    Loader {
        active: view.fly.start.editing
        anchors { fill: parent; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        sourceComponent: StartCard {
            start: view.fly.start
            flight: view.fly.flightTitle(view.chosenRow)
        }
    }
    ColumnLayout {
        visible: !view.isEditing
        anchors.fill: parent
        anchors.leftMargin: Tokens.gap8
        anchors.rightMargin: Tokens.gap8
        spacing: Tokens.isLow(view.Window.height) ? Tokens.gap8 : Tokens.gap12
        FlightSettings {
            Layout.fillWidth: true
            fly: view.fly
        }
        NoticeLine {
            visible: view.fly.failure !== ""
            Layout.fillWidth: true
            verdict: Verdict.Wrong
            text: qsTr("The flow could not begin: %1").arg(view.fly.failure)
        }
        Repeater {
            model: view.fly.problems
            NoticeLine {
                required property string words
                Layout.fillWidth: true
                verdict: Verdict.Wrong
                text: qsTr("A file was left out: %1").arg(words)
            }
        }
        PlainText {
            visible: view.fly.flows.count === 0
            Layout.fillWidth: true
            text: qsTr("There are no flows yet. Put flow files into a folder below “procedures”; they are listed here at once.")
        }
        GroupBar {
            visible: view.fly.groups.count > 1
            Layout.fillWidth: true
            groups: view.fly.groups
            group: view.fly.group
            onChosen: group => view.chooseGroup(group)
        }
        Flickable {
            id: flick
            Layout.fillWidth: true
            Layout.preferredHeight: Math.min(cards.implicitHeight, view.height * 0.55)
            contentHeight: cards.implicitHeight
            clip: true
            ThinScrollBar.vertical: ThinScrollBar {}
            onHeightChanged: revealChosen()
            onContentHeightChanged: revealChosen()

            function revealChosen(): void {
                reveal(repeater.itemAt(view.chosenRow));
            }
            function reveal(card: Item): void {
                if (card !== null)
                    contentY = Math.min(card.y, Math.max(contentY, card.y + card.height - height));
            }

            GridLayout {
                id: cards
                width: flick.width
                columns: Math.max(1, Math.floor(flick.width / (340 * Tokens.textScale)))
                rowSpacing: Tokens.gap16
                columnSpacing: Tokens.gap16
                Repeater {
                    id: repeater
                    model: view.fly.flows
                    FlowCard {
                        id: card
                        Layout.fillWidth: true
                        Layout.fillHeight: true
                        Layout.preferredWidth: 1
                        chosen: rowId === view.chosenRow
                        buttonHeight: measured.implicitHeight
                        demonstrationFirst: view.fly.demonstrationFirst
                        onActiveFocusChanged: if (activeFocus) flick.reveal(card)
                        onClicked: view.rowChosen(rowId)
                        onDoubleClicked: view.fly.startFlow(rowId)
                        onFlyAsked: view.fly.startFlow(rowId)
                        onDemonstrationAsked: view.fly.demonstrate(rowId)
                    }
                }
            }
        }
        RowLayout {
            visible: view.fly.flows.count > 0
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap24
            BriefingCard {
                visible: view.fly.briefing.count > 0
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 2
                facts: view.fly.briefing
            }
            StepPreview {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 3
                steps: view.fly.preview
            }
        }
        Item {
            visible: view.fly.flows.count === 0
            Layout.fillHeight: true
        }
    }
}
