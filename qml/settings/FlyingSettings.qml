import QtQuick
import QtQuick.Layouts
import Flowhand

/// How much is shown while flying.
ColumnLayout {
    id: section

    required property Settings settings

    spacing: Tokens.gap24

    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Help while flying")
        hint: section.settings.help === "guided" ? qsTr("The step that is due, where its control is and where it has to go, and the steps to come.")
            : section.settings.help === "prompted" ? qsTr("The step that is due, and its control as it stands. Where it has to go and what comes next is yours to know.")
            : qsTr("That a step is due, and what became of it. Which one it is, is yours to know.")
        values: ["guided", "prompted", "from memory"]
        words: [qsTr("guided"), qsTr("prompted"), qsTr("from memory")]
        value: section.settings.help
        onPicked: value => section.settings.help = value
    }
    PlainText {
        Layout.fillWidth: true
        text: qsTr("It holds from the next run on and stands in the run's record: runs with different help are not alike. A demonstration is always guided.")
        color: Tokens.quiet
    }
}
