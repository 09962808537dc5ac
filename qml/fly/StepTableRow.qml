import QtQuick
import QtQuick.Layouts
import Flowhand

/// One step of the table, or its head.
Item {
    id: line

    required property string title
    required property string who
    required property bool own
    required property string dueAt
    required property string doneAt
    required property string word
    required property string detail
    required property int verdict
    property bool isHead: false

    readonly property color ink: isHead ? Tokens.quiet : Tokens.text
    readonly property int size: isHead ? Tokens.quietSize : Tokens.bodySize

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
            font.pixelSize: line.size
            color: line.ink
        }
        PlainText {
            Layout.preferredWidth: 64 * Tokens.textScale
            text: line.who
            font.pixelSize: line.size
            color: line.own ? line.ink : Tokens.quiet
        }
        PlainText {
            Layout.preferredWidth: 56 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.dueAt
            font.pixelSize: line.size
            color: line.ink
        }
        PlainText {
            Layout.preferredWidth: 56 * Tokens.textScale
            horizontalAlignment: Text.AlignRight
            text: line.doneAt
            font.pixelSize: line.size
            color: line.ink
        }
        VerdictSymbol {
            Layout.preferredWidth: Tokens.bodySize + 3
            Layout.preferredHeight: Tokens.bodySize + 3
            opacity: line.isHead ? 0 : 1
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: Tokens.raised
        }
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 2
            text: line.detail !== "" ? line.detail : line.word
            font.pixelSize: line.size
            color: line.ink
        }
    }
}
