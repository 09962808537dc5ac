import QtQuick
import QtQuick.Layouts
import Flowhand

/// The flows as cards, in the order of the flight.
StageView {
    id: view

    property int chosenRow: 0
    signal rowChosen(row: int)

    function primaryAction(): bool {
        if (fly.flows.count > 0)
            fly.startFlow(chosenRow);
        return fly.flows.count > 0;
    }

    Keys.onRightPressed: rowChosen(Math.min(chosenRow + 1, fly.flows.count - 1))
    Keys.onLeftPressed: rowChosen(Math.max(chosenRow - 1, 0))

    ColumnLayout {
        anchors.fill: parent
        anchors.leftMargin: Tokens.gap8
        anchors.rightMargin: Tokens.gap8
        spacing: Tokens.gap16
        RowLayout {
            Layout.fillWidth: true
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
            visible: !view.fly.feed.editing
            Layout.fillWidth: true
            spacing: Tokens.gap16
            PlainText {
                Layout.fillWidth: true
                horizontalAlignment: Text.AlignRight
                text: view.fly.feed.chosen === "" ? qsTr("Motion: the practice aircraft") : qsTr("Motion: %1").arg(view.fly.feed.title)
                color: Tokens.quiet
            }
            ActionButton {
                text: qsTr("Change")
                hint: qsTr("Where the aircraft's motion comes from")
                onClicked: view.fly.feed.editing = true
            }
        }
        Loader {
            active: view.fly.feed.editing
            visible: active
            Layout.fillWidth: true
            sourceComponent: FeedCard { feed: view.fly.feed }
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
            GridLayout {
                id: cards
                width: flick.width
                columns: Math.max(1, Math.floor(flick.width / (340 * Tokens.textScale)))
                rowSpacing: Tokens.gap16
                columnSpacing: Tokens.gap16
                Repeater {
                    model: view.fly.flows
                    FlowCard {
                        Layout.fillWidth: true
                        Layout.fillHeight: true
                        Layout.preferredWidth: 1
                        chosen: rowId === view.chosenRow
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
