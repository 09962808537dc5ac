import QtQuick
import QtQuick.Layouts
import Flowhand

/// What is heard of the program.
ColumnLayout {
    id: section

    required property Settings settings
    required property Sound sound
    required property DelayMeter meter
    required property bool withRig

    spacing: Tokens.gap24

    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Words and tones")
        hint: qsTr("Off holds no sound device. What would be said is on the screen anyway.")
        values: ["on", "quiet", "off"]
        words: [qsTr("on"), qsTr("quiet"), qsTr("off")]
        value: section.settings.sound
        onPicked: value => section.settings.sound = value
    }
    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Sound device of the tones")
        hint: section.sound.deviceIds.length > 0 ? qsTr("Words come from the speech engine, a program of its own: the desktop's sound settings say where they are heard.")
            : qsTr("The sound server has not told its devices: the sound is off, or no server runs.")
        values: ["", ...section.sound.deviceIds]
        words: [qsTr("as the desktop"), ...section.sound.deviceNames]
        value: section.settings.soundDevice
        onPicked: value => section.settings.soundDevice = value
    }
    SettingPercent {
        Layout.fillWidth: true
        label: qsTr("Volume")
        hint: qsTr("Quiet is a quarter of it.")
        value: section.settings.volumePercent
        onPicked: value => section.settings.volumePercent = value
    }
    ActionButton {
        enabled: section.settings.sound !== "off"
        text: qsTr("Listen")
        hint: qsTr("A tone and a few words, as they are set")
        onClicked: section.sound.tryOut()
    }
    DelaySetting {
        Layout.fillWidth: true
        settings: section.settings
        meter: section.meter
        withRig: section.withRig
    }
    // Last: an engine may have hundreds.
    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Voice of people")
        hint: section.sound.voices.length > 0 ? qsTr("The cockpit and the ground have voices of their own, where the speech engine has them.")
            : qsTr("The speech engine has not told its voices: it is off, or still opens.")
        values: ["", ...section.sound.voices]
        words: [qsTr("the first"), ...section.sound.voices]
        value: section.settings.voice
        onPicked: value => section.settings.voice = value
    }
}
