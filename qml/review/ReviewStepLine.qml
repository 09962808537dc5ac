import QtQuick
import QtQuick.Layouts
import Flowhand

/// One step of a run that is gone through.
ChoosableLine {
    id: line

    required property string title
    required property string who
    required property int verdict
    required property string word
    required property string due
    required property string took

    spoken: qsTr("%1: %2").arg(title).arg(word)
    implicitHeight: row.implicitHeight + 8

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        spacing: Tokens.gap8
        VerdictSymbol {
            Layout.alignment: Qt.AlignTop
            Layout.topMargin: 2
            Layout.preferredWidth: Tokens.bodySize + 1
            Layout.preferredHeight: Tokens.bodySize + 1
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: line.ground
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0
            PlainText {
                Layout.fillWidth: true
                text: line.title
                color: line.who === "" ? Tokens.text : Tokens.quiet
            }
            PlainText {
                Layout.fillWidth: true
                text: line.who !== "" ? qsTr("%1, by the %2").arg(line.word).arg(line.who) : line.word
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
            }
        }
        PlainText {
            Layout.alignment: Qt.AlignTop
            Layout.preferredWidth: 56 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.due
            color: Tokens.quiet
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.alignment: Qt.AlignTop
            Layout.preferredWidth: 48 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.took
            wrapMode: Text.NoWrap
        }
    }
}
