import QtQuick
import Flowhand

/// One way of wiring, to be chosen.
Item {
    id: line

    required property string text
    property bool chosen: false
    signal picked

    implicitHeight: words.implicitHeight + 10
    activeFocusOnTab: true
    Accessible.role: Accessible.RadioButton
    Accessible.name: text
    Accessible.checkable: true
    Accessible.checked: chosen
    Accessible.onPressAction: picked()
    Keys.onSpacePressed: picked()

    Rectangle {
        anchors.fill: parent
        radius: Tokens.corner
        color: line.chosen ? Tokens.sunken : "transparent"
        border.width: line.activeFocus ? 2 : 0
        border.color: Tokens.accent
    }
    Rectangle {
        id: ring
        x: Tokens.gap8
        anchors.verticalCenter: parent.verticalCenter
        width: 14
        height: 14
        radius: 7
        color: "transparent"
        border.width: 2
        border.color: line.chosen ? Tokens.accent : Tokens.line
        Rectangle {
            anchors.centerIn: parent
            visible: line.chosen
            width: 6
            height: 6
            radius: 3
            color: Tokens.accent
        }
    }
    PlainText {
        id: words
        anchors { left: ring.right; leftMargin: Tokens.gap8; right: parent.right; rightMargin: Tokens.gap8; verticalCenter: parent.verticalCenter }
        text: line.text
        font.weight: line.chosen ? Font.DemiBold : Font.Normal
    }
    TapHandler {
        onTapped: line.picked()
    }
}
