import QtQuick
import Flowhand

/// What is written on a button: its words, and the key that does the same.
Item {
    id: face

    required property string words
    required property string keyName
    property color ink: Tokens.text
    property color keyInk: Tokens.quiet
    property int size: Tokens.bodySize
    property bool strong: false

    implicitWidth: row.implicitWidth
    implicitHeight: row.implicitHeight

    Row {
        id: row
        anchors.centerIn: parent
        spacing: Tokens.gap8
        PlainText {
            text: face.words
            color: face.ink
            font.pixelSize: face.size
            font.weight: face.strong ? Font.DemiBold : Font.Normal
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
        PlainText {
            anchors.verticalCenter: parent.verticalCenter
            visible: face.keyName !== ""
            text: Tokens.keyNames(face.keyName)
            color: face.keyInk
            font.pixelSize: Tokens.quietSize
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
}
