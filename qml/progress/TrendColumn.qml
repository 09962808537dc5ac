import QtQuick
import QtQuick.Layouts
import Flowhand

/// A picture of runs with its head, its scale and its trend in words.
ColumnLayout {
    id: column

    required property string head
    required property string trend
    required property real highest
    required property real plotHeight
    default property alias picture: frame.data

    Layout.fillWidth: true
    Layout.preferredWidth: 1
    spacing: Tokens.gap4

    PlainText {
        Layout.fillWidth: true
        text: column.head
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        Item {
            Layout.preferredWidth: 34 * Tokens.textScale
            Layout.preferredHeight: column.plotHeight
            PlainText {
                anchors { right: parent.right; top: parent.top }
                text: column.highest
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                wrapMode: Text.NoWrap
            }
            PlainText {
                anchors { right: parent.right; bottom: parent.bottom }
                text: "0"
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
            }
        }
        Item {
            id: frame
            Layout.fillWidth: true
            Layout.preferredHeight: column.plotHeight
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("%1: %2").arg(column.head).arg(column.trend)
        }
    }
    PlainText {
        Layout.fillWidth: true
        Layout.minimumHeight: Tokens.bodySize * 1.4
        text: column.trend
    }
}
