import QtQuick
import QtQuick.Layouts
import Flowhand

/// Which key does what; each can be given another one.
ColumnLayout {
    id: choices

    required property KeyChoice keys
    /// The row that waits for its new key; -1: none.
    property int asked: -1
    property int told: -1
    property string problem: ""

    function take(row: int, key: int): void {
        problem = keys.bind(row, key);
        told = row;
        asked = -1;
    }

    spacing: Tokens.gap8

    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap16
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Press a key's button, then the key that is to do the same. Return, Esc, Tab and the Page keys stay as they are.")
            color: Tokens.quiet
        }
        ActionButton {
            Layout.alignment: Qt.AlignTop
            enabled: choices.keys.anyChanged
            text: qsTr("All as usual")
            onClicked: {
                choices.keys.restoreAll();
                choices.problem = "";
            }
        }
    }
    Repeater {
        model: choices.keys.rows
        ColumnLayout {
            id: entry
            required property int rowId
            required property string section
            required property string key
            required property string action
            required property bool changed
            Layout.fillWidth: true
            spacing: Tokens.gap4
            PlainText {
                visible: entry.section !== ""
                Layout.topMargin: Tokens.gap12
                text: entry.section
                font.weight: Font.DemiBold
            }
            KeyChoiceLine {
                Layout.fillWidth: true
                keyName: entry.key
                does: entry.action
                changed: entry.changed
                waiting: choices.asked === entry.rowId
                problem: choices.told === entry.rowId ? choices.problem : ""
                onAsked: choices.asked = choices.asked === entry.rowId ? -1 : entry.rowId
                onGivenUp: choices.asked = -1
                onPicked: key => choices.take(entry.rowId, key)
                onRestored: {
                    choices.problem = choices.keys.restore(entry.rowId);
                    choices.told = entry.rowId;
                }
            }
        }
    }
}
