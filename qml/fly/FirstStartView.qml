import QtQuick
import QtQuick.Layouts
import Flowhand

/// The question of the first start: hands on controls, or on the screen.
StageView {
    id: view

    /// To look at runs first, or to wire a rig.
    signal samplesAsked
    signal benchAsked

    readonly property bool isWired: fly.rigTitle !== ""
    /// What is there to be used is offered first.
    readonly property bool hasControls: isWired || fly.controlsConnected

    function takeControls(): void {
        if (!isWired)
            benchAsked();
        fly.chooseHands(true); // with that this view is gone
    }
    function primaryAction(): bool {
        if (hasControls)
            takeControls();
        else
            fly.chooseHands(false);
        return true;
    }

    ColumnLayout {
        anchors.centerIn: parent
        width: Math.min(parent.width, 920 * Tokens.textScale)
        spacing: Tokens.gap24
        PlainText {
            Layout.fillWidth: true
            text: qsTr("What will your hands be on?")
            font.pixelSize: Tokens.titleSize
            font.weight: Font.DemiBold
        }
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Flowhand watches the levers and switches you move, says which step is due, and shows at once whether it was done.")
            color: Tokens.quiet
        }
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap16
            ChoiceCard {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 1
                title: qsTr("I have controls")
                words: view.isWired ? qsTr("Levers, pedals or switches on USB, wired as in the rig “%1”.").arg(view.fly.rigTitle)
                    : qsTr("Levers, pedals or switches on USB. The bench shows how they move, and asks for a basic set of them, one after the other.")
                actionText: view.isWired ? qsTr("Use my controls") : qsTr("Wire my controls")
                primary: view.hasControls
                onAccepted: view.takeControls()
            }
            ChoiceCard {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 1
                title: qsTr("None yet")
                words: qsTr("A cockpit on the screen, moved by mouse and keys. You can watch each flow being flown first.")
                actionText: qsTr("Use the screen")
                primary: !view.hasControls
                onAccepted: view.fly.chooseHands(false)
            }
        }
        ActionButton {
            text: qsTr("First look at sample runs, flown well and badly")
            onClicked: view.samplesAsked()
        }
        Repeater {
            model: view.fly.remarks
            NoticeLine {
                required property string words
                Layout.fillWidth: true
                verdict: Verdict.Info
                text: words
            }
        }
    }
}
