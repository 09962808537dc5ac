import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where the builder says which true values the places have that will be held; in place of the plot.
ColumnLayout {
    id: panel

    required property BenchPresenter bench
    property alias values: entry.text
    signal begun
    signal closed

    onVisibleChanged: {
        if (visible) {
            entry.text = bench.valuesExample;
            entry.forceActiveFocus();
            entry.selectAll();
        }
    }
    spacing: Tokens.gap8

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Mark two or more places on the lever's way, measure their true angle or share, and write them from the low end to the high end, both ends included. You will be asked to hold each. The signal then reads what you measured, straight from place to place.")
        color: Tokens.quiet
    }
    TextLine {
        id: entry
        Layout.fillWidth: true
        label: qsTr("True values, with commas between them")
        onSubmitted: panel.begun()
    }
    Item { Layout.fillHeight: true }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        ActionButton {
            text: qsTr("Calibrate to these")
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
