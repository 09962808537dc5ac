import QtQuick
import QtQuick.Layouts
import Flowhand

/// One step of two runs, or the head of their table.
ChoosableLine {
    id: line

    required property string title
    required property string done
    required property string other
    required property string behind
    required property string ofIt
    required property string difference
    required property int step
    property bool isHead: false
    readonly property color ink: isHead ? Tokens.quiet : Tokens.text
    readonly property int size: isHead ? Tokens.quietSize : Tokens.bodySize

    spoken: qsTr("%1: behind %2, %3").arg(title).arg(behind).arg(difference)
    implicitHeight: row.implicitHeight + 8

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 3
            Layout.alignment: Qt.AlignTop
            text: line.title
            font.pixelSize: line.size
            color: line.ink
        }
        Repeater {
            model: [line.done, line.other, line.behind, line.ofIt]
            PlainText {
                required property string modelData
                Layout.preferredWidth: 52 * Tokens.textScale
                Layout.alignment: line.isHead ? Qt.AlignBottom : Qt.AlignTop
                horizontalAlignment: Text.AlignRight
                text: modelData
                font.pixelSize: line.size
                color: line.ink
            }
        }
        PlainText {
            Layout.fillWidth: true
            Layout.preferredWidth: 3
            Layout.alignment: Qt.AlignTop
            text: line.difference
            font.pixelSize: Tokens.quietSize
            color: line.isHead ? Tokens.quiet : Tokens.text
        }
    }
}
