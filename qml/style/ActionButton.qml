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

    implicitWidth: content.implicitWidth + leftPadding + rightPadding
    implicitHeight: Math.max(40, content.implicitHeight + 16)
    leftPadding: Tokens.gap16
    rightPadding: Tokens.gap16
    opacity: enabled ? 1 : 0.5
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Accessible.description: button.hint
    Keys.onReturnPressed: button.click()
    Keys.onEnterPressed: button.click()

    background: Rectangle {
        radius: Tokens.corner
        color: button.primary ? Tokens.accent : button.down || button.hovered ? Tokens.sunken : "transparent"
        border.width: button.primary ? 0 : 1
        border.color: Tokens.line
        opacity: button.primary && button.down ? 0.85 : 1
        FocusFrame { shown: button.visualFocus }
    }
    contentItem: Item {
        implicitWidth: content.implicitWidth
        implicitHeight: content.implicitHeight
        Row {
            id: content
            anchors.centerIn: parent
            spacing: Tokens.gap8
            PlainText {
                text: button.text
                color: button.primary ? Tokens.accentText : Tokens.text
                font.weight: button.primary ? Font.DemiBold : Font.Normal
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            PlainText {
                anchors.verticalCenter: parent.verticalCenter
                visible: button.keyName !== ""
                text: button.keyName
                color: button.primary ? Tokens.accentText : Tokens.quiet
                font.pixelSize: Tokens.quietSize
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
}
