import QtQuick
import QtQuick.Templates as T
import Flowhand

/// One figure of a mark.
T.Button {
    id: button

    required property bool here

    implicitWidth: Tokens.bodySize + 14
    implicitHeight: Tokens.bodySize + 12
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.RadioButton
    Accessible.checkable: true
    Accessible.checked: here
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    background: Rectangle {
        radius: Tokens.corner
        color: button.here ? Tokens.accent : button.hovered ? Tokens.sunken : "transparent"
        border.width: button.here ? 0 : 1
        border.color: Tokens.line
        FocusFrame {
            anchors.margins: -2
            shown: button.visualFocus
        }
    }
    contentItem: PlainText {
        text: button.text
        color: button.here ? Tokens.accentText : Tokens.text
        font.weight: button.here ? Font.DemiBold : Font.Normal
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
}
