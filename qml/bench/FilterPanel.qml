import QtQuick
import QtQuick.Layouts
import Flowhand

/// The filters of the chosen control: how late they make it, what its measurement asks for, and the way back.
ColumnLayout {
    id: panel

    required property BenchPresenter bench
    required property bool busy

    visible: bench.filterWords !== ""
    spacing: Tokens.gap4

    Rectangle {
        Layout.fillWidth: true
        implicitHeight: 1
        color: Tokens.line
        opacity: 0.5
    }
    PlainText {
        Layout.fillWidth: true
        text: panel.bench.filterWords
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    PlainText {
        visible: text !== ""
        Layout.fillWidth: true
        text: panel.bench.filterChange
        font.pixelSize: Tokens.quietSize
    }
    Flow {
        visible: !panel.busy && (panel.bench.filterChange !== "" || panel.bench.filterUndo)
        Layout.fillWidth: true
        spacing: Tokens.gap8
        ActionButton {
            visible: panel.bench.filterChange !== ""
            height: 36
            text: qsTr("Use these filters")
            keyName: "A"
            hint: qsTr("Writes them into the rig file")
            onClicked: panel.bench.begin(BenchPresenter.ApplyFilters)
        }
        QuietButton {
            visible: panel.bench.filterUndo
            height: 36
            text: qsTr("Take the last change back")
            keyName: "U"
            Accessible.description: qsTr("The filters that the rig file had before")
            onClicked: panel.bench.begin(BenchPresenter.UndoFilters)
        }
    }
}
