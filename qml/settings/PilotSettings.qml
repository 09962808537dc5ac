import QtQuick
import QtQuick.Layouts
import Flowhand

/// Who flies.
ColumnLayout {
    id: section

    required property Settings settings
    property string problem: ""

    function add(): void {
        problem = settings.addPilot(line.text);
        if (problem === "")
            line.clear();
    }

    spacing: Tokens.gap24

    SettingChoice {
        Layout.fillWidth: true
        label: qsTr("Who flies")
        hint: qsTr("The name stands in each run from the next one on, but in no demonstration.")
        values: ["", ...section.settings.pilots]
        words: [qsTr("nobody in particular"), ...section.settings.pilots]
        value: section.settings.pilot
        onPicked: value => {
            section.settings.pilot = value;
            section.problem = "";
        }
    }
    ColumnLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Name")
            font.weight: Font.DemiBold
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            TextLine {
                id: line
                label: qsTr("Name of a pilot")
                onSubmitted: section.add()
            }
            ActionButton {
                text: qsTr("Add")
                hint: qsTr("Adds this pilot, who flies from now on")
                onClicked: section.add()
            }
            ActionButton {
                enabled: section.settings.pilot !== ""
                text: section.settings.pilot === "" ? qsTr("Rename") : qsTr("Rename %1").arg(section.settings.pilot)
                hint: qsTr("Runs already flown keep the name they were flown under")
                onClicked: {
                    section.problem = section.settings.renamePilot(line.text);
                    if (section.problem === "")
                        line.clear();
                }
            }
        }
        NoticeLine {
            visible: section.problem !== ""
            Layout.fillWidth: true
            verdict: Verdict.Wrong
            text: section.problem
        }
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Runs already flown keep the name they were flown under.")
            color: Tokens.quiet
        }
    }
}
