import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where runs and rigs are kept.
ColumnLayout {
    id: section

    required property Settings settings
    /// Not while there is a run: it goes on in the folder that it began in.
    required property bool changeable
    property string problem: ""

    function use(folder: string): void {
        if (changeable)
            problem = settings.useDataFolder(folder);
    }

    spacing: Tokens.gap12

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Folder of runs and rigs")
        font.weight: Font.DemiBold
    }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap12
        TextLine {
            id: line
            width: Math.min(section.width, 520 * Tokens.textScale)
            label: qsTr("Folder of runs and rigs")
            text: section.settings.dataFolder !== "" ? section.settings.dataFolder : section.settings.usualDataFolder
            onSubmitted: section.use(line.text)
        }
        ActionButton {
            enabled: section.changeable
            text: qsTr("Use this folder")
            onClicked: section.use(line.text)
        }
        ActionButton {
            enabled: section.changeable && section.settings.dataFolder !== ""
            text: qsTr("Use the usual one")
            onClicked: section.use("")
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
        text: qsTr("Runs and rigs of the folder before stay there; choose it again to see them. The command line uses the same folder.")
        color: Tokens.quiet
    }
    PlainText {
        Layout.topMargin: Tokens.gap12
        Layout.fillWidth: true
        text: qsTr("What is chosen here is kept in %1.").arg(section.settings.file)
        color: Tokens.quiet
    }
}
