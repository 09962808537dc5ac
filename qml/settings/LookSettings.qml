import QtQuick
import QtQuick.Layouts
import Flowhand

/// How the program looks.
ColumnLayout {
    id: section

    required property Settings settings

    spacing: Tokens.gap24

    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Language")
        hint: qsTr("Of the window. Flows and aircraft speak as their files are written, and crews speak English.")
        values: ["system", "en", "de"]
        words: [qsTr("as the desktop"), "English", "Deutsch"]
        value: section.settings.language
        onPicked: value => section.settings.language = value
    }
    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Colours")
        values: ["system", "light", "dark"]
        words: [qsTr("as the desktop"), qsTr("light"), qsTr("dark")]
        value: section.settings.theme
        onPicked: value => section.settings.theme = value
    }
    SettingPercent {
        Layout.fillWidth: true
        label: qsTr("Text size")
        value: section.settings.textPercent
        least: 100
        most: 200
        onPicked: value => section.settings.textPercent = value
    }
    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Motion on screen")
        hint: qsTr("Reduced: nothing fades or slides. The aircraft and the controls move as they are.")
        values: ["full", "reduced"]
        words: [qsTr("full"), qsTr("reduced")]
        value: section.settings.motion
        onPicked: value => section.settings.motion = value
    }
    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Distances on the ground")
        hint: qsTr("Speeds and heights have the units of the aircraft's files.")
        values: ["m", "ft"]
        words: [qsTr("metres"), qsTr("feet")]
        value: section.settings.length
        onPicked: value => section.settings.length = value
    }
}
