import QtQuick
import QtQuick.Layouts
import Flowhand

/// One thing that was measured: verdict, value, reason, and the way out.
ColumnLayout {
    id: line

    required property int verdict
    required property string word
    required property string text
    required property string reason
    required property string remedy

    spacing: 2
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1: %2").arg(word).arg(text)

    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        VerdictSymbol {
            Layout.alignment: Qt.AlignTop
            Layout.preferredWidth: Tokens.bodySize + 1
            Layout.preferredHeight: Tokens.bodySize + 1
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: Tokens.raised
        }
        PlainText {
            Layout.fillWidth: true
            text: line.text
        }
        PlainText {
            Layout.alignment: Qt.AlignTop
            text: line.word
            font.pixelSize: Tokens.quietSize
            color: Tokens.verdictColor(line.verdict)
            wrapMode: Text.NoWrap
        }
    }
    PlainText {
        visible: text !== ""
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.bodySize + 9
        text: line.reason
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    PlainText {
        visible: text !== ""
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.bodySize + 9
        text: line.remedy
        font.pixelSize: Tokens.quietSize
    }
}
