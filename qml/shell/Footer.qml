import QtQuick
import QtQuick.Layouts
import Flowhand

/// The one line at the bottom of every place.
Rectangle {
    id: footer

    required property Sound sound
    signal keysAsked
    signal settingsAsked
    signal manualAsked
    /// Not while a run goes on.
    property bool settingsOffered: true
    property bool manualOffered: true
    /// What is to be known of the run all the time; empty: nothing.
    property string mark: ""

    implicitHeight: Math.max(36, row.implicitHeight + 8)
    color: Tokens.sunken

    RowLayout {
        id: row
        anchors.fill: parent
        anchors.leftMargin: Tokens.gap16
        anchors.rightMargin: Tokens.gap8
        spacing: Tokens.gap16
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Flowhand is a hobby trainer and is not for real-world flight training.")
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        PlainText {
            visible: footer.mark !== ""
            text: footer.mark
            font.pixelSize: Tokens.quietSize
            color: Tokens.info
            wrapMode: Text.NoWrap
        }
        QuietButton {
            visible: footer.settingsOffered
            text: qsTr("Settings")
            keyName: "F12"
            Accessible.description: qsTr("Look, sound, help, pilots and data")
            onClicked: footer.settingsAsked()
        }
        QuietButton {
            text: footer.sound.words
            keyName: "F9"
            Accessible.description: qsTr("On, quiet, off: of the voice and the tones")
            onClicked: footer.sound.change()
        }
        QuietButton {
            enabled: footer.manualOffered
            opacity: enabled ? 1 : 0
            text: qsTr("Manual")
            keyName: qsTr("Ctrl 6")
            onClicked: footer.manualAsked()
        }
        QuietButton {
            text: qsTr("Keys")
            keyName: "F1"
            onClicked: footer.keysAsked()
        }
    }
}
