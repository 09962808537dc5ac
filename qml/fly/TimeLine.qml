import QtQuick
import Flowhand

/// How long the due step has been open: up to the mark it is on time.
Item {
    id: line

    required property real share
    required property real timely
    readonly property bool isLate: share > timely

    implicitHeight: 10
    Accessible.role: Accessible.ProgressBar
    Accessible.name: isLate ? qsTr("Late") : qsTr("On time")

    Rectangle {
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width
        height: 4
        radius: 2
        color: Tokens.sunken
    }
    Rectangle {
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width * line.share
        height: 4
        radius: 2
        color: line.isLate ? Tokens.late : Tokens.accent
    }
    Rectangle {
        x: parent.width * line.timely - 1
        width: 2
        height: parent.height
        color: Tokens.line
    }
}
