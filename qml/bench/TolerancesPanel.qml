import QtQuick
import QtQuick.Layouts
import Flowhand

/// How near a control must come in the check walk, to be changed; in place of the plot.
ColumnLayout {
    id: panel

    required property BenchPresenter bench
    readonly property string words: steering.text + ", " + lever.text + ", " + travel.text
    signal begun
    signal closed

    onVisibleChanged: {
        if (!visible)
            return;
        steering.text = bench.tolerances[0];
        lever.text = bench.tolerances[1];
        travel.text = bench.tolerances[2];
        steering.forceActiveFocus();
        steering.selectAll();
    }
    spacing: Tokens.gap8

    PlainText {
        Layout.fillWidth: true
        text: qsTr("So near to its ends and its centre the check walk asks every control to come. The goals are 2 deg, 5 deg and 3 %: figures of training devices, which this is not. The check sheet says what was asked.")
        color: Tokens.quiet
    }
    GridLayout {
        Layout.fillWidth: true
        columns: 3
        columnSpacing: Tokens.gap12
        rowSpacing: Tokens.gap4
        Repeater {
            model: [qsTr("Controls that turn"), qsTr("Levers in degrees"), qsTr("Others, of travel")]
            PlainText {
                required property string modelData
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                text: modelData
                font.pixelSize: Tokens.quietSize
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
        }
        TextLine {
            id: steering
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            label: qsTr("Tolerance of controls that turn, in degrees")
            onSubmitted: panel.begun()
        }
        TextLine {
            id: lever
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            label: qsTr("Tolerance of levers in degrees")
            onSubmitted: panel.begun()
        }
        TextLine {
            id: travel
            Layout.fillWidth: true
            Layout.preferredWidth: 1
            label: qsTr("Tolerance of all others, in percent of their travel")
            onSubmitted: panel.begun()
        }
    }
    Item { Layout.fillHeight: true }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        ActionButton {
            text: qsTr("Write into the rig file")
            primary: true
            keyName: qsTr("Return")
            onClicked: panel.begun()
        }
        ActionButton {
            text: qsTr("Back")
            keyName: qsTr("Esc")
            onClicked: panel.closed()
        }
    }
}
