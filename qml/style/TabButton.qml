import QtQuick
import QtQuick.Templates as T
import Flowhand

/// One of several places or lists, of which one is shown.
T.Button {
    id: button

    required property bool isHere
    property int size: Tokens.bodySize

    implicitWidth: implicitContentWidth + leftPadding + rightPadding
    implicitHeight: implicitContentHeight + 8
    leftPadding: Tokens.gap12
    rightPadding: Tokens.gap12
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.PageTab
    Accessible.name: text
    Accessible.selected: isHere
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    background: Item {
        Rectangle {
            anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
            height: 2
            color: button.isHere ? Tokens.accent : button.hovered ? Tokens.line : "transparent"
        }
        FocusFrame {
            anchors.margins: 0
            shown: button.visualFocus
        }
    }
    contentItem: PlainText {
        text: button.text
        font.pixelSize: button.size
        font.weight: button.isHere ? Font.DemiBold : Font.Normal
        color: button.isHere ? Tokens.text : Tokens.quiet
        verticalAlignment: Text.AlignVCenter
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
}
