import QtQuick
import QtQuick.Layouts
import Flowhand

/// One note; one with a place leads to it.
ChoosableLine {
    id: line

    required property string what
    required property string where
    required property string words
    required property double time
    signal removed

    choosable: time >= 0
    spoken: qsTr("%1: %2").arg(what).arg(words)
    implicitHeight: row.implicitHeight + 10

    RowLayout {
        id: row
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: 2 }
        spacing: Tokens.gap8
        ColumnLayout {
            Layout.fillWidth: true
            spacing: 0
            PlainText {
                Layout.fillWidth: true
                text: line.where !== "" ? line.where : line.what
                font.pixelSize: Tokens.quietSize
                color: Tokens.info
            }
            PlainText {
                visible: text !== ""
                Layout.fillWidth: true
                text: line.words
            }
        }
        QuietButton {
            Layout.alignment: Qt.AlignTop
            text: "×"
            Accessible.name: qsTr("Remove: %1").arg(line.what)
            onClicked: line.removed()
        }
    }
}
