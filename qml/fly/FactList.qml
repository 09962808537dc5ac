import QtQuick
import Flowhand

/// Words and what stands for them, one below the other.
Column {
    id: list

    required property RowModel facts
    property real labelWidth: 96 * Tokens.textScale

    spacing: 2

    Repeater {
        model: list.facts
        Item {
            id: fact
            required property string label
            required property string value
            width: list.width
            height: Math.max(words.implicitHeight, name.implicitHeight)
            Accessible.role: Accessible.StaticText
            Accessible.name: qsTr("%1: %2").arg(label).arg(value)
            PlainText {
                id: name
                width: list.labelWidth - Tokens.gap8
                text: fact.label
                color: Tokens.quiet
                Accessible.ignored: true
            }
            PlainText {
                id: words
                x: list.labelWidth
                width: parent.width - x
                text: fact.value
                Accessible.ignored: true
            }
        }
    }
}
