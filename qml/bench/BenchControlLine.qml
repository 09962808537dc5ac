import QtQuick
import QtQuick.Layouts
import Flowhand

/// One control: what it is wired to, where it stands, and how far its proof has come.
Item {
    id: line

    required property string label
    required property string inputs
    required property string valueText
    required property double share
    required property bool stirring
    required property int verdict
    required property string word
    required property string detail
    property bool chosen: false
    signal picked

    implicitHeight: column.implicitHeight + 12
    activeFocusOnTab: true
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1: %2").arg(label).arg(word)
    Accessible.selected: chosen
    Accessible.onPressAction: picked()
    Keys.onSpacePressed: picked()

    Rectangle {
        anchors.fill: parent
        anchors.margins: 1
        radius: Tokens.corner
        color: line.chosen ? Tokens.sunken : "transparent"
        border.width: line.activeFocus ? 2 : line.stirring ? 1 : 0
        border.color: line.activeFocus || line.stirring ? Tokens.accent : Tokens.line
    }
    TapHandler {
        onTapped: line.picked()
    }
    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        spacing: 2
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            VerdictSymbol {
                Layout.preferredWidth: Tokens.bodySize + 1
                Layout.preferredHeight: Tokens.bodySize + 1
                verdict: line.verdict
                color: Tokens.verdictColor(line.verdict)
                ground: line.chosen ? Tokens.sunken : Tokens.raised
            }
            PlainText {
                Layout.fillWidth: true
                text: line.label
                font.weight: line.chosen ? Font.DemiBold : Font.Normal
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                text: line.valueText
                color: line.stirring ? Tokens.accent : Tokens.text
                wrapMode: Text.NoWrap
            }
        }
        PlainText {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.bodySize + 9
            text: line.inputs === "" ? line.word : line.detail === "" ? qsTr("%1, %2").arg(line.word).arg(line.inputs) : qsTr("%1, %2 · %3").arg(line.word).arg(line.detail).arg(line.inputs)
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        Rectangle {
            visible: line.share >= 0
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.bodySize + 9
            implicitHeight: 4
            radius: 2
            color: line.chosen ? Tokens.raised : Tokens.sunken
            Rectangle {
                width: Math.max(4, line.share * parent.width)
                height: parent.height
                radius: 2
                color: line.stirring ? Tokens.accent : Tokens.line
            }
        }
    }
}
