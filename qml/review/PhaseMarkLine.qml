import QtQuick
import QtQuick.Layouts
import Flowhand

/// The instructor's mark of a phase, with what it means.
ColumnLayout {
    id: line

    required property int rowId
    required property string title
    required property int mark
    required property string meaning
    required property ReviewNotes notes
    property int pointed: 0
    signal marked(mark: int)

    spacing: 2
    opacity: enabled ? 1 : 0.5

    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap4
        PlainText {
            Layout.fillWidth: true
            text: line.title
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        Repeater {
            model: 5
            MarkButton {
                required property int index
                text: index + 1
                here: line.mark === index + 1
                Accessible.name: qsTr("%1: mark %2").arg(line.title).arg(text)
                Accessible.description: line.notes.meaningOf(index + 1)
                onClicked: line.marked(index + 1)
                onHoveredChanged: line.pointed = hovered ? index + 1 : 0
                onVisualFocusChanged: line.pointed = visualFocus ? index + 1 : 0
            }
        }
    }
    PlainText {
        visible: text !== ""
        Layout.fillWidth: true
        text: line.pointed > 0 ? qsTr("%1: %2").arg(line.pointed).arg(line.notes.meaningOf(line.pointed)) : line.meaning
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
}
