import QtQuick
import QtQuick.Layouts
import Flowhand

/// The note that is being written. Return keeps it, Escape leaves it.
Rectangle {
    id: editor

    required property ReviewNotes notes
    readonly property string heading: notes.title

    // Another note was begun.
    onHeadingChanged: begin()
    Component.onCompleted: begin()

    function begin(): void {
        entry.text = notes.draft;
        entry.selectAll();
        entry.forceActiveFocus();
    }

    radius: Tokens.corner
    color: Tokens.sunken
    implicitHeight: column.implicitHeight + 2 * Tokens.gap12

    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; top: parent.top; margins: Tokens.gap12 }
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: editor.notes.title
            font.weight: Font.DemiBold
            maximumLineCount: 2
            elide: Text.ElideRight
        }
        Flow {
            visible: editor.notes.choices.length > 0
            Layout.fillWidth: true
            spacing: Tokens.gap4
            Repeater {
                model: editor.notes.choices
                TabButton {
                    required property int index
                    required property string modelData
                    text: modelData
                    size: Tokens.quietSize
                    leftPadding: 6
                    rightPadding: 6
                    isHere: index === editor.notes.choice
                    onClicked: editor.notes.choose(index)
                }
            }
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: editor.notes.hint
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        TextLine {
            id: entry
            Layout.fillWidth: true
            label: editor.notes.title
            onSubmitted: editor.notes.save(text)
            Keys.onEscapePressed: editor.notes.cancel()
            Keys.onDownPressed: editor.notes.choose(editor.notes.choice + 1)
            Keys.onUpPressed: editor.notes.choose(editor.notes.choice - 1)
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: editor.notes.failure
            font.pixelSize: Tokens.quietSize
            color: Tokens.wrong
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap4
            QuietButton {
                text: qsTr("Keep it")
                keyName: qsTr("Return")
                onClicked: editor.notes.save(entry.text)
            }
            QuietButton {
                text: qsTr("Leave it")
                keyName: qsTr("Esc")
                onClicked: editor.notes.cancel()
            }
            PlainText {
                visible: editor.notes.choices.length > 0
                topPadding: 4
                text: qsTr("↑ ↓ choose")
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                wrapMode: Text.NoWrap
            }
        }
    }
}
