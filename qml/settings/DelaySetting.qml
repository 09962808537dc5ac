import QtQuick
import QtQuick.Layouts
import Flowhand

/// The sum of sound and input delay, measured by taps to a click and kept for each rig.
ColumnLayout {
    id: setting

    required property Settings settings
    required property DelayMeter meter
    required property bool withRig
    readonly property int kept: settings.delayOf(meter.rigName(withRig), settings.delays)

    spacing: Tokens.gap8

    Connections {
        target: setting.meter
        function onMeasured(rig: string, millis: int): void {
            setting.settings.setDelay(rig, millis);
        }
    }
    Component.onDestruction: meter?.stop()

    PlainText {
        Layout.fillWidth: true
        text: setting.kept > 0 ? qsTr("Delay of sound and hands: %1 ms").arg(setting.kept) : qsTr("Delay of sound and hands: not measured")
        font.weight: Font.DemiBold
    }
    PlainText {
        Layout.fillWidth: true
        text: setting.meter.running ? setting.withRig ? qsTr("Tap any button or switch of your cockpit to each click: %1 of %2.").arg(setting.meter.taps).arg(setting.meter.tapsWanted)
                : qsTr("Tap the space bar to each click: %1 of %2.").arg(setting.meter.taps).arg(setting.meter.tapsWanted)
            : setting.withRig ? qsTr("Of the rig “%1”. It is taken off the time that you need for each step.").arg(setting.meter.rigName(true))
            : qsTr("Of the controls on the screen. It is taken off the time that you need for each step.")
        color: setting.meter.running ? Tokens.text : Tokens.quiet
    }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap12
        ActionButton {
            enabled: setting.settings.sound !== "off"
            text: setting.meter.running ? qsTr("Stop") : qsTr("Measure")
            hint: qsTr("Ten taps to a click")
            onClicked: setting.meter.running ? setting.meter.stop() : setting.meter.begin(setting.withRig)
            Keys.priority: Keys.BeforeItem
            Keys.onPressed: event => {
                event.accepted = setting.meter.running && event.key === Qt.Key_Space;
                if (event.accepted && !event.isAutoRepeat)
                    setting.meter.tap();
            }
            Keys.onReleased: event => event.accepted = setting.meter.running && event.key === Qt.Key_Space
        }
        ActionButton {
            enabled: setting.kept > 0 && !setting.meter.running
            text: qsTr("Forget it")
            hint: qsTr("Nothing is taken off any more")
            onClicked: setting.settings.setDelay(setting.meter.rigName(setting.withRig), 0)
        }
    }
    NoticeLine {
        visible: setting.meter.outcome !== ""
        Layout.fillWidth: true
        text: setting.meter.outcome
    }
}
