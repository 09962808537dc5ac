import QtQuick
import QtQuick.Layouts
import Flowhand

/// A file of the library in a list.
ChoosableLine {
    id: line

    required property string title
    required property string detail
    required property bool own
    required property bool broken

    implicitHeight: column.implicitHeight + 12
    spoken: own ? qsTr("%1, yours. %2").arg(title).arg(detail) : qsTr("%1. %2").arg(title).arg(detail)

    ColumnLayout {
        id: column
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
        spacing: 0
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            PlainText {
                Layout.fillWidth: true
                text: line.title
                font.weight: line.chosen ? Font.DemiBold : Font.Normal
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            PlainText {
                text: line.own ? qsTr("yours") : ""
                font.pixelSize: Tokens.quietSize
                color: Tokens.accent
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: line.detail
            font.pixelSize: Tokens.quietSize
            color: line.broken ? Tokens.wrong : Tokens.quiet
            maximumLineCount: 2
            elide: Text.ElideRight
            Accessible.ignored: true
        }
    }
}
