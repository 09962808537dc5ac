import QtQuick
import QtQuick.Templates as T
import Flowhand

/// A button with words. One on a screen is `primary`.
T.Button {
    id: button

    property bool primary: false
    /// The key that does the same, shown beside the words.
    property string keyName: ""
    property string hint: ""

    implicitWidth: implicitContentWidth + leftPadding + rightPadding
    implicitHeight: Math.max(40, implicitContentHeight + 16)
    leftPadding: Tokens.gap16
    rightPadding: Tokens.gap16
    opacity: enabled ? 1 : 0.5
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Accessible.description: button.hint
    Keys.onReturnPressed: button.clicked()
    Keys.onEnterPressed: button.clicked()

    background: Rectangle {
        radius: Tokens.corner
        color: button.primary ? Tokens.accent : button.down || button.hovered ? Tokens.sunken : "transparent"
        border.width: button.primary ? 0 : 1
        border.color: Tokens.line
        opacity: button.primary && button.down ? 0.85 : 1
        FocusFrame { shown: button.visualFocus }
    }
    contentItem: ButtonWords {
        words: button.text
        keyName: button.keyName
        ink: button.primary ? Tokens.accentText : Tokens.text
        keyInk: button.primary ? Tokens.accentText : Tokens.quiet
        strong: button.primary
    }
}
