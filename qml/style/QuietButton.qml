import QtQuick
import QtQuick.Templates as T
import Flowhand

/// Words that can be pressed, without a frame: for what is seldom needed.
T.Button {
    id: button

    property string keyName: ""

    implicitWidth: implicitContentWidth + 16
    implicitHeight: implicitContentHeight + 8
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: button.text
    Keys.onReturnPressed: button.clicked()
    Keys.onEnterPressed: button.clicked()

    background: Rectangle {
        radius: Tokens.corner
        color: button.hovered || button.down ? Tokens.raised : "transparent"
        border.width: button.hovered ? 1 : 0
        border.color: Tokens.line
        FocusFrame {
            anchors.margins: 0
            shown: button.visualFocus
        }
    }
    contentItem: ButtonWords {
        words: button.text
        keyName: button.keyName
        size: Tokens.quietSize
    }
}
