import QtQuick
import QtQuick.Layouts
import Flowhand

/// One loss: the figures that lead to it, its points, when it was, and whether it was put right.
ChoosableLine {
    id: line

    required property string keys
    required property string points
    required property string time
    required property string sentence
    required property int verdict
    required property string repair
    required property string ruling

    spoken: qsTr("%1 points: %2").arg(points).arg(sentence)
    implicitHeight: row.implicitHeight + 10

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        spacing: Tokens.gap8
        PlainText {
            Layout.alignment: Qt.AlignTop
            Layout.topMargin: 2
            Layout.preferredWidth: Tokens.quietSize * 1.3
            horizontalAlignment: Text.AlignRight
            text: line.keys
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.NoWrap
        }
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
                text: line.sentence
            }
            PlainText {
                Layout.fillWidth: true
                text: line.repair !== "" ? qsTr("%1, %2").arg(line.time).arg(line.repair) : line.time
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
            }
            PlainText {
                Layout.fillWidth: true
                visible: text !== ""
                text: line.ruling
                font.pixelSize: Tokens.quietSize
                color: Tokens.info
            }
        }
        PlainText {
            Layout.alignment: Qt.AlignTop
            text: line.points
            font.weight: Font.DemiBold
            wrapMode: Text.NoWrap
        }
    }
}
