import QtQuick
import Flowhand

/// One of the lines A and B across all lanes.
Item {
    id: mark

    required property string name

    y: Tokens.gap8
    height: parent ? parent.height - y - Tokens.gap8 : 0

    Rectangle {
        x: -0.5
        width: 1
        height: parent.height
        color: Tokens.info
    }
    Rectangle {
        x: -width / 2
        width: letter.implicitWidth + 8
        height: letter.implicitHeight
        radius: 4
        color: Tokens.info
        PlainText {
            id: letter
            anchors.centerIn: parent
            text: mark.name
            font.pixelSize: Tokens.quietSize
            font.weight: Font.DemiBold
            color: Tokens.raised
            wrapMode: Text.NoWrap
        }
    }
}
