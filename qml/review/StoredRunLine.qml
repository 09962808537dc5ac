import QtQuick
import QtQuick.Layouts
import Flowhand

/// One stored run: when, what, how it went, and what it is marked with.
Item {
    id: line

    required property string date
    required property string flow
    required property string detail
    required property string score
    required property string length
    required property int verdict
    required property string word
    required property string marks
    required property string tags
    required property bool reference
    property bool chosen: false
    signal picked
    signal opened

    implicitHeight: row.implicitHeight + 16
    activeFocusOnTab: true
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1, %2: %3 %4").arg(flow).arg(date).arg(score).arg(word)
    Accessible.selected: chosen
    Accessible.onPressAction: opened()
    Keys.onSpacePressed: picked()

    Rectangle {
        anchors.fill: parent
        anchors.margins: 1
        radius: Tokens.corner
        color: line.chosen ? Tokens.sunken : "transparent"
        border.width: line.activeFocus ? 2 : 0
        border.color: Tokens.accent
    }
    TapHandler {
        onTapped: line.picked()
        onDoubleTapped: line.opened()
    }
    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap12; rightMargin: Tokens.gap12 }
        spacing: Tokens.gap16
        PlainText {
            Layout.preferredWidth: 128 * Tokens.textScale
            Layout.alignment: Qt.AlignTop
            text: line.date
            wrapMode: Text.NoWrap
        }
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0
            PlainText {
                Layout.fillWidth: true
                text: line.flow
                font.weight: line.chosen ? Font.DemiBold : Font.Normal
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                Layout.fillWidth: true
                text: line.detail
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
        }
        ColumnLayout {
            Layout.preferredWidth: 200 * Tokens.textScale
            Layout.maximumWidth: 200 * Tokens.textScale
            spacing: 0
            PlainText {
                Layout.fillWidth: true
                visible: text !== ""
                text: line.reference && line.tags !== "" ? qsTr("Reference · %1").arg(line.tags) : line.reference ? qsTr("Reference") : line.tags
                color: line.reference ? Tokens.accent : Tokens.text
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                Layout.fillWidth: true
                visible: text !== ""
                text: line.marks
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
        }
        PlainText {
            Layout.preferredWidth: 64 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.length
            color: Tokens.quiet
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.preferredWidth: 52 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.score
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
            wrapMode: Text.NoWrap
        }
        VerdictSymbol {
            Layout.preferredWidth: Tokens.bodySize + 3
            Layout.preferredHeight: Tokens.bodySize + 3
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: line.chosen ? Tokens.sunken : Tokens.raised
        }
        PlainText {
            Layout.preferredWidth: 88 * Tokens.textScale
            text: line.word
            wrapMode: Text.NoWrap
        }
    }
}
