import QtQuick
import Flowhand

/// A step that goes wrong: how often, and what was done instead.
Item {
    id: line

    required property string title
    required property string rate
    required property string instead

    implicitHeight: words.height
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1 went wrong in %2 runs: %3").arg(title).arg(rate).arg(instead)

    PlainText {
        id: share
        width: 72 * Tokens.textScale
        text: line.rate
        font.weight: Font.DemiBold
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    Column {
        id: words
        x: share.width + Tokens.gap8
        width: parent.width - x
        PlainText {
            width: parent.width
            text: line.title
            Accessible.ignored: true
        }
        PlainText {
            width: parent.width
            text: line.instead
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            Accessible.ignored: true
        }
    }
}
