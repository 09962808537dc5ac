import QtQuick
import QtQuick.Layouts
import Flowhand

/// One step: the controls that it needs, and how far they are proven.
Item {
    id: line

    required property string flow
    required property string title
    required property string needs
    required property int verdict
    required property string word
    required property string why
    property bool flowShown: true

    implicitHeight: row.implicitHeight + 8
    Accessible.role: Accessible.Row
    Accessible.name: qsTr("%1: %2").arg(title).arg(word)

    RowLayout {
        id: row
        width: parent.width
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.gap12
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 3
            text: line.title
            elide: Text.ElideRight
            maximumLineCount: 2
        }
        PlainText {
            visible: line.flowShown
            Layout.fillWidth: true
            Layout.preferredWidth: 2
            text: line.flow
            color: Tokens.quiet
            elide: Text.ElideRight
            maximumLineCount: 2
        }
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 3
            text: line.needs
            color: Tokens.quiet
            elide: Text.ElideRight
            maximumLineCount: 2
        }
        VerdictSymbol {
            Layout.preferredWidth: Tokens.bodySize + 1
            Layout.preferredHeight: Tokens.bodySize + 1
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: Tokens.raised
        }
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 4
            text: line.why !== "" ? qsTr("%1: %2").arg(line.word).arg(line.why) : line.word
        }
    }
}
