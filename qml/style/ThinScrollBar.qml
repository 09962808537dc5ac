import QtQuick
import QtQuick.Templates as T
import Flowhand

T.ScrollBar {
    id: bar

    implicitWidth: 10
    implicitHeight: 10
    padding: 2
    visible: size < 1.0
    minimumSize: 0.1
    contentItem: Rectangle {
        implicitWidth: 6
        implicitHeight: 6
        radius: 3
        color: Tokens.line
        opacity: bar.pressed || bar.hovered ? 1 : 0.6
    }
}
