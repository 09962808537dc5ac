import QtQuick
import QtQuick.Layouts
import Flowhand

/// The flows as cards, in the order of the flight.
StageView {
    id: view

    property int chosenRow: 0
    signal rowChosen(row: int)

    function primaryAction(): bool {
        const canBegin = fly.flows.count > 0 && !fly.feed.editing;
        if (canBegin)
            fly.startFlow(chosenRow);
        return canBegin;
    }

    function step(by: int): void {
        const row = chosenRow + by;
        if (row >= 0 && row < fly.flows.count && !fly.feed.editing)
            rowChosen(row);
    }

    onChosenRowChanged: flick.revealChosen()
    Keys.onRightPressed: step(1)
    Keys.onLeftPressed: step(-1)
    Keys.onDownPressed: step(cards.columns)
    Keys.onUpPressed: step(-cards.columns)

    Loader {
        active: view.fly.feed.editing
        anchors { left: parent.left; right: parent.right; top: parent.top; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        sourceComponent: FeedCard { feed: view.fly.feed }
    }
    ColumnLayout {
        visible: !view.fly.feed.editing
        anchors.fill: parent
        anchors.leftMargin: Tokens.gap8
        anchors.rightMargin: Tokens.gap8
        spacing: Tokens.gap16
        ColumnLayout {
            spacing: Tokens.gap8
            RowLayout {
                spacing: Tokens.gap16
                PlainText {
                    Layout.fillWidth: true
                    text: qsTr("Choose a flow")
                    font.pixelSize: Tokens.titleSize
                    font.weight: Font.DemiBold
                }
                PlainText {
                    text: view.fly.withRig ? qsTr("Hands on: %1").arg(view.fly.rigTitle) : qsTr("Hands on: the screen (simulated)")
                    color: Tokens.quiet
                    wrapMode: Text.NoWrap
                }
                ActionButton {
                    text: qsTr("Change")
                    hint: qsTr("What your hands are on")
                    onClicked: view.fly.askHands()
                }
            }
            RowLayout {
                spacing: Tokens.gap16
                PlainText {
                    Layout.fillWidth: true
                    horizontalAlignment: Text.AlignRight
                    text: view.fly.feed.chosen === "" ? qsTr("Motion: the practice aircraft") : qsTr("Motion: %1").arg(view.fly.feed.title)
                    color: Tokens.quiet
                    elide: Text.ElideRight
                    maximumLineCount: 1
                }
                ActionButton {
                    text: qsTr("Change")
                    hint: qsTr("Where the aircraft's motion comes from")
                    onClicked: view.fly.feed.editing = true
                }
            }
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
            text: qsTr("There are no flows yet. Put flow files into a folder below “procedures”, then start Flowhand again.")
        }
        Flickable {
            id: flick
            Layout.fillWidth: true
            Layout.preferredHeight: Math.min(cards.implicitHeight, view.height * 0.6)
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
                        onActiveFocusChanged: if (activeFocus) flick.reveal(card)
                        onClicked: view.rowChosen(rowId)
                        onDoubleClicked: view.fly.startFlow(rowId)
                        onFlyAsked: view.fly.startFlow(rowId)
                        onDemonstrationAsked: view.fly.demonstrate(rowId)
                    }
                }
            }
        }
        StepPreview {
            visible: view.fly.flows.count > 0
            Layout.fillWidth: true
            Layout.fillHeight: true
            steps: view.fly.preview
        }
        Item {
            visible: view.fly.flows.count === 0
            Layout.fillHeight: true
        }
    }
}
