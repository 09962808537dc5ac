import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where a run that stands can go on: with another step.
Card {
    id: card

    required property FlyPresenter fly

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap12
        PickList {
            Layout.fillWidth: true
            Layout.fillHeight: true
            focus: true
            title: qsTr("Go on with")
            rows: card.fly.jump.steps
            onPicked: row => card.fly.jump.pick(row)
            Component.onCompleted: forceActiveFocus()
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            ActionButton {
                text: qsTr("Jump there")
                primary: true
                keyName: qsTr("Return")
                onClicked: card.fly.jumpToPicked()
            }
            ActionButton {
                text: qsTr("Stay")
                keyName: "F7"
                onClicked: card.fly.closeJump()
            }
        }
    }
}
