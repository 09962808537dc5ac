import QtQuick
import QtQuick.Templates as T
import Flowhand

/// Something that is as it is until it is pressed to change it: what it is, and how it stands.
T.Button {
    id: tile

    required property string label
    required property string value
    required property string hint

    component Words: Item {
        id: words
        required property string label
        required property string value
        implicitWidth: Math.ceil(Math.max(name.implicitWidth, state.implicitWidth)) + 2 * Tokens.gap12 + 2
        implicitHeight: column.implicitHeight + 2 * Tokens.gap8
        Column {
            id: column
            anchors { left: parent.left; right: parent.right; leftMargin: Tokens.gap12; rightMargin: Tokens.gap12; verticalCenter: parent.verticalCenter }
            PlainText {
                id: name
                width: column.width
                text: words.label
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            PlainText {
                id: state
                width: column.width
                text: words.value
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }

    implicitWidth: implicitContentWidth
    implicitHeight: implicitContentHeight
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("%1: %2").arg(label).arg(value)
    Accessible.description: hint
    Keys.onReturnPressed: clicked()
    Keys.onEnterPressed: clicked()

    background: Rectangle {
        radius: Tokens.corner
        color: tile.down || tile.hovered ? Tokens.sunken : "transparent"
        border.width: 1
        border.color: Tokens.line
        FocusFrame { shown: tile.visualFocus }
    }
    contentItem: Words {
        label: tile.label
        value: tile.value
    }
}
