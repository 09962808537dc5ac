import QtQuick
import Flowhand

/// Shows where the keyboard is. Lies just outside its parent.
Rectangle {
    required property bool shown

    anchors.fill: parent
    anchors.margins: -4
    radius: Tokens.corner + 4
    color: "transparent"
    border.width: 2
    border.color: Tokens.accent
    visible: shown
}
