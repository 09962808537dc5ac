import QtQuick
import QtQuick.Layouts
import Flowhand

/// The note that is written while the run goes on. Return keeps it, Escape leaves it.
Card {
    id: bar

    required property RunNote note
    /// The keyboard goes back to the run.
    signal left

    implicitHeight: column.implicitHeight + 2 * Tokens.gap8

    Component.onCompleted: {
        entry.text = note.draft;
        entry.selectAll();
        entry.forceActiveFocus();
    }
    Component.onDestruction: left()

    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap12; rightMargin: Tokens.gap12 }
        spacing: Tokens.gap4
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                text: bar.note.title
                font.weight: Font.DemiBold
                wrapMode: Text.NoWrap
            }
            TextLine {
                id: entry
                enabled: bar.note.writing
                Layout.fillWidth: true
                label: bar.note.title
                onSubmitted: bar.note.keep(text)
                Keys.onEscapePressed: bar.note.cancel()
            }
            QuietButton {
                text: qsTr("Keep it")
                keyName: qsTr("Return")
                enabled: bar.note.writing
                onClicked: bar.note.keep(entry.text)
            }
            QuietButton {
                text: qsTr("Leave it")
                keyName: qsTr("Esc")
                onClicked: bar.note.cancel()
            }
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: bar.note.failure
            font.pixelSize: Tokens.quietSize
            color: Tokens.wrong
        }
    }
}
