import QtQuick
import QtQuick.Layouts
import Flowhand

/// A key, what it does, and the way to give it another one.
ColumnLayout {
    id: line

    required property string keyName
    required property string does
    required property bool changed
    /// The next key that is pressed is its new one.
    required property bool waiting
    required property string problem
    signal asked
    signal givenUp
    signal picked(key: int)
    signal restored

    spacing: Tokens.gap4

    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap12
        ActionButton {
            id: button
            Layout.preferredWidth: Math.max(implicitWidth, 150 * Tokens.textScale)
            text: line.waiting ? qsTr("Press a key …") : line.keyName
            Accessible.name: line.waiting ? qsTr("Press the new key for: %1").arg(line.does) : qsTr("%1: %2").arg(line.keyName).arg(line.does)
            Accessible.description: qsTr("Gives it another key; Esc leaves it as it is")
            onClicked: line.asked()
            onActiveFocusChanged: if (!activeFocus && line.waiting) line.givenUp()
            Keys.priority: Keys.BeforeItem
            Keys.onPressed: event => {
                if (!line.waiting)
                    return;
                event.accepted = true;
                const isModifier = event.key === Qt.Key_Shift || event.key === Qt.Key_Control || event.key === Qt.Key_Alt || event.key === Qt.Key_AltGr || event.key === Qt.Key_Meta;
                if (event.key === Qt.Key_Escape)
                    line.givenUp();
                else if (!isModifier)
                    line.picked(event.key);
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: line.does
        }
        QuietButton {
            visible: line.changed
            text: qsTr("As usual")
            Accessible.description: qsTr("The usual key again for: %1").arg(line.does)
            onClicked: line.restored()
        }
    }
    NoticeLine {
        visible: line.problem !== ""
        Layout.fillWidth: true
        verdict: Verdict.Wrong
        text: line.problem
    }
}
