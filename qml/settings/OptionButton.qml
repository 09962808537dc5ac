import QtQuick
import QtQuick.Templates as T
import Flowhand

/// One of a few, with a ring that is filled where it is the chosen one.
T.Button {
    id: option

    required property bool chosen

    component Words: Item {
        id: line
        required property string words
        required property bool chosen
        implicitWidth: ring.width + Tokens.gap8 + label.implicitWidth
        implicitHeight: label.implicitHeight
        Rectangle {
            id: ring
            width: Tokens.bodySize
            height: width
            radius: width / 2
            anchors.verticalCenter: parent.verticalCenter
            color: "transparent"
            border.width: line.chosen ? 2 : 1
            border.color: line.chosen ? Tokens.accent : Tokens.line
            Rectangle {
                anchors.centerIn: parent
                visible: line.chosen
                width: parent.width / 2
                height: width
                radius: width / 2
                color: Tokens.accent
            }
        }
        PlainText {
            id: label
            anchors { left: ring.right; leftMargin: Tokens.gap8; verticalCenter: parent.verticalCenter }
            text: line.words
            font.weight: line.chosen ? Font.DemiBold : Font.Normal
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }

    implicitWidth: implicitContentWidth + leftPadding + rightPadding
    implicitHeight: implicitContentHeight + Tokens.gap12
    leftPadding: Tokens.gap8
    rightPadding: Tokens.gap12
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.RadioButton
    Accessible.name: text
    Accessible.checkable: true
    Accessible.checked: chosen
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    background: Rectangle {
        radius: Tokens.corner
        color: option.down || option.hovered ? Tokens.sunken : "transparent"
        border.width: 1
        border.color: option.chosen ? Tokens.accent : Tokens.line
        FocusFrame { shown: option.visualFocus }
    }
    contentItem: Words {
        words: option.text
        chosen: option.chosen
    }
}
