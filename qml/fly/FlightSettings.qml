import QtQuick
import QtQuick.Layouts
import Flowhand

/// What is flown, with which hands, by which motion and from where.
RowLayout {
    id: settings

    required property FlyPresenter fly

    spacing: Tokens.gap12

    PlainText {
        Layout.fillWidth: true
        Layout.minimumWidth: implicitWidth
        text: settings.fly.withScenarios ? qsTr("Choose a scenario") : qsTr("Choose a flow")
        font.pixelSize: Tokens.titleSize
        font.weight: Font.DemiBold
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    ChoiceTile {
        Layout.fillWidth: true
        Layout.minimumWidth: 120 * Tokens.textScale
        Layout.maximumWidth: Math.min(implicitWidth, 300 * Tokens.textScale)
        label: qsTr("Hands on")
        value: settings.fly.withRig ? settings.fly.rigTitle : qsTr("the screen (simulated)")
        hint: qsTr("Changes what your hands are on")
        onClicked: settings.fly.askHands()
    }
    ChoiceTile {
        Layout.fillWidth: true
        Layout.minimumWidth: 120 * Tokens.textScale
        Layout.maximumWidth: Math.min(implicitWidth, 300 * Tokens.textScale)
        label: qsTr("Motion from")
        value: settings.fly.feed.chosen === "" ? qsTr("the practice aircraft") : settings.fly.feed.title
        hint: qsTr("Changes where the aircraft's motion comes from")
        onClicked: settings.fly.feed.editing = true
    }
    ChoiceTile {
        visible: settings.fly.flows.count > 0
        Layout.fillWidth: true
        Layout.minimumWidth: 120 * Tokens.textScale
        Layout.maximumWidth: Math.min(implicitWidth, 300 * Tokens.textScale)
        label: qsTr("Begins at")
        value: settings.fly.start.words
        hint: qsTr("Changes where the flight begins, with which step, and how fast it goes")
        onClicked: settings.fly.start.editing = true
    }
}
