import QtQuick
import QtQuick.Templates as T
import Flowhand

/// One line to write in.
T.TextField {
    id: field

    required property string label
    signal submitted

    implicitWidth: 320 * Tokens.textScale
    implicitHeight: contentHeight + 2 * Tokens.gap12
    leftPadding: Tokens.gap12
    rightPadding: Tokens.gap12
    verticalAlignment: TextInput.AlignVCenter
    font.family: Tokens.family
    font.pixelSize: Tokens.bodySize
    color: Tokens.text
    selectionColor: Tokens.accent
    selectedTextColor: Tokens.accentText
    selectByMouse: true
    Accessible.name: field.label
    // Here, because a text field lets the key through to whatever is behind it.
    Keys.onReturnPressed: field.submitted()
    Keys.onEnterPressed: field.submitted()

    background: Rectangle {
        radius: Tokens.corner
        color: Tokens.sunken
        border.color: field.activeFocus ? Tokens.accent : Tokens.line
        border.width: field.activeFocus ? 2 : 1
    }
}
