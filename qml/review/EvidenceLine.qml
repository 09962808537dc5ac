import QtQuick
import QtQuick.Layouts
import Flowhand

/// One fact; a time leads to its place.
ChoosableLine {
    id: line

    required property string label
    required property string value
    required property string detail
    required property double time

    choosable: time >= 0
    spoken: qsTr("%1: %2 %3").arg(label).arg(value).arg(detail)
    implicitHeight: row.implicitHeight + 4

    RowLayout {
        id: row
        width: parent.width
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.gap8
        PlainText {
            Layout.alignment: Qt.AlignTop
            Layout.preferredWidth: line.width * 0.34
            text: line.label
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        PlainText {
            Layout.alignment: Qt.AlignTop
            Layout.preferredWidth: line.detail === "" ? line.width * 0.6 : Math.max(56 * Tokens.textScale, implicitWidth)
            Layout.maximumWidth: line.detail === "" ? line.width * 0.6 : line.width * 0.3
            text: line.value
            font.pixelSize: Tokens.quietSize
        }
        PlainText {
            visible: text !== ""
            Layout.alignment: Qt.AlignTop
            Layout.fillWidth: true
            text: line.detail
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
    }
}
