import QtQuick
import QtQuick.Layouts
import Flowhand

/// The note that is written while the run goes on, or why none can be. Return keeps it, Escape leaves it.
Card {
    id: bar

    required property RunNote note
    /// The keyboard goes back to the run.
    signal closed

    implicitHeight: column.implicitHeight + 2 * Tokens.gap8

    Component.onCompleted: {
        entry.text = note.draft;
        entry.selectAll();
        if (note.writing)
            entry.forceActiveFocus();
    }
    Component.onDestruction: closed()

    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap12; rightMargin: Tokens.gap12 }
        spacing: Tokens.gap4
        RowLayout {
            visible: bar.note.writing
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                text: bar.note.title
                font.weight: Font.DemiBold
                wrapMode: Text.NoWrap
            }
            TextLine {
                id: entry
                Layout.fillWidth: true
                label: bar.note.title
                onSubmitted: bar.note.keep(text)
                Keys.onEscapePressed: bar.note.cancel()
            }
            QuietButton {
                text: qsTr("Keep it")
                keyName: qsTr("Return")
                onClicked: bar.note.keep(entry.text)
            }
            QuietButton {
                text: qsTr("Leave it")
                keyName: qsTr("Esc")
                onClicked: bar.note.cancel()
            }
        }
        RowLayout {
            visible: bar.note.failure !== ""
            Layout.fillWidth: true
            spacing: Tokens.gap12
            NoticeLine {
                Layout.fillWidth: true
                text: bar.note.failure
            }
            QuietButton {
                text: qsTr("Dismiss")
                keyName: qsTr("Esc")
                enabled: !bar.note.writing
                onClicked: bar.note.cancel()
            }
        }
    }
}
