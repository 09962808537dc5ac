import QtQuick
import QtQuick.Templates as T
import Flowhand

/// A line of text to be written. Return and Escape go on to who shows it.
T.TextField {
    id: entry

    /// What it is for; read aloud, and shown by whoever uses it.
    required property string label

    implicitHeight: contentHeight + topPadding + bottomPadding
    leftPadding: Tokens.gap12
    rightPadding: Tokens.gap12
    topPadding: Tokens.gap8
    bottomPadding: Tokens.gap8
    color: Tokens.text
    selectionColor: Tokens.accent
    selectedTextColor: Tokens.accentText
    font.family: Tokens.family
    font.pixelSize: Tokens.bodySize
    selectByMouse: true
    activeFocusOnTab: true
    Accessible.role: Accessible.EditableText
    Accessible.name: label
    background: Rectangle {
        radius: Tokens.corner
        color: Tokens.sunken
        border.width: entry.activeFocus ? 2 : 1
        border.color: entry.activeFocus ? Tokens.accent : Tokens.line
    }
}
