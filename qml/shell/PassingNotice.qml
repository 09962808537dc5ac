import QtQuick
import QtQuick.Layouts
import Flowhand

/// Something to be known once, at the foot of the window, until it is dismissed.
RowLayout {
    id: notice

    required property string text
    signal dismissed

    visible: text !== ""
    Layout.leftMargin: Tokens.gap16
    Layout.rightMargin: Tokens.gap8
    Layout.bottomMargin: Tokens.gap4
    spacing: Tokens.gap16

    NoticeLine {
        Layout.fillWidth: true
        text: notice.text
    }
    QuietButton {
        text: qsTr("Dismiss")
        onClicked: notice.dismissed()
    }
}
