import QtQuick
import QtQuick.Templates as T
import Flowhand

/// Words that can be pressed, without a frame: for what is seldom needed.
T.Button {
    id: button

    property string keyName: ""

    implicitWidth: content.implicitWidth + 16
    implicitHeight: content.implicitHeight + 8
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Keys.onReturnPressed: button.click()
    Keys.onEnterPressed: button.click()

    background: Rectangle {
        radius: Tokens.corner
        color: button.hovered || button.down ? Tokens.raised : "transparent"
        FocusFrame {
            anchors.margins: 0
            shown: button.visualFocus
        }
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
                font.pixelSize: Tokens.quietSize
                font.underline: button.hovered
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            PlainText {
                visible: button.keyName !== ""
                text: button.keyName
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
}
