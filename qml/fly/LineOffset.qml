import QtQuick
import Flowhand

/// Where the nosewheel rolls beside the line on the ground.
Item {
    id: offset

    /// Metres right of the line.
    required property real offset
    /// Metres to either end of the bar.
    readonly property real reach: 10
    required property string words

    implicitWidth: 110 * Tokens.textScale
    implicitHeight: 26 * Tokens.textScale + 18
    Accessible.role: Accessible.StaticText
    Accessible.name: words

    PlainText {
        text: offset.words
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    Rectangle {
        y: parent.height - 16
        width: parent.width
        height: 8
        radius: 4
        color: Tokens.sunken
        border.width: 1
        border.color: Tokens.line
    }
    Rectangle {
        x: parent.width / 2 - 1
        y: parent.height - 20
        width: 2
        height: 16
        color: Tokens.line
    }
    Rectangle {
        x: parent.width / 2 + Math.max(-1, Math.min(1, offset.offset / offset.reach)) * (parent.width / 2 - 6) - width / 2
        y: parent.height - 20
        width: 10
        height: 16
        radius: 4
        color: Tokens.text
    }
}
