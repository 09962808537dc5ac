import QtQuick
import QtQuick.Layouts
import Flowhand

/// How the aircraft moves, and what can be done with the run.
Card {
    id: strip

    required property FlyPresenter fly

    implicitHeight: row.implicitHeight + 2 * Tokens.gap8

    RowLayout {
        id: row
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        anchors.leftMargin: Tokens.gap24
        anchors.rightMargin: Tokens.gap16
        spacing: Tokens.gap24
        Reading {
            label: qsTr("Time")
            value: strip.fly.run.clock
            unit: ""
        }
        Repeater {
            model: strip.fly.run.motion
            Reading {}
        }
        LineOffset {
            visible: strip.fly.run.hasLine
            offset: strip.fly.run.offLine
        }
        Item {
            Layout.fillWidth: true
        }
        ActionButton {
            visible: strip.fly.stage === FlyPresenter.Running
            text: qsTr("Hold")
            keyName: "F2"
            onClicked: strip.fly.hold()
        }
        ActionButton {
            text: qsTr("Repeat")
            hint: qsTr("The due step again from its start")
            keyName: "F3"
            onClicked: strip.fly.repeat()
        }
        ActionButton {
            text: qsTr("Stop")
            keyName: "F8"
            onClicked: strip.fly.stop()
        }
    }
}
