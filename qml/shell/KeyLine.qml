import QtQuick
import Flowhand

/// A key and what it does.
Item {
    id: line

    required property string keyName
    required property string does

    height: Math.max(cap.height, words.height)

    Rectangle {
        id: cap
        width: Math.max(28, name.implicitWidth + 12)
        height: name.implicitHeight + 4
        radius: 4
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
        PlainText {
            id: name
            anchors.centerIn: parent
            text: line.keyName
            font.pixelSize: Tokens.quietSize
            wrapMode: Text.NoWrap
        }
    }
    PlainText {
        id: words
        x: 68 * Tokens.textScale
        width: parent.width - x
        text: line.does
        font.pixelSize: Tokens.quietSize
    }
}
