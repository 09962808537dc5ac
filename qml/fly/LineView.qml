import QtQuick
import Flowhand

/// The line on the ground from above, as it lies before the nosewheel.
Item {
    id: view

    required property RunPresenter run
    readonly property real wheelY: height * 0.7

    width: 200
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The line on the ground, from above")

    Rectangle {
        width: parent.width
        anchors { top: parent.top; bottom: words.top; bottomMargin: Tokens.gap8 }
        radius: Tokens.corner
        color: Tokens.sunken
        clip: true
        Rectangle {
            width: 4
            height: view.height * 3
            x: (view.width - width) / 2 - Math.max(-1, Math.min(1, view.run.offLine / 8)) * (view.width / 2 - 8)
            y: view.wheelY - height / 2
            rotation: -view.run.lineAngle
            antialiasing: true
            color: Tokens.accent
        }
        Rectangle {
            width: 10
            height: 22
            radius: 4
            x: (parent.width - width) / 2
            y: view.wheelY - height / 2
            color: Tokens.text
        }
    }
    PlainText {
        id: words
        anchors { horizontalCenter: parent.horizontalCenter; bottom: parent.bottom }
        height: implicitHeight
        text: view.run.aheadText
        font.pixelSize: Tokens.strongSize
        wrapMode: Text.NoWrap
    }
}
