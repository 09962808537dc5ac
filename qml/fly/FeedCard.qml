import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where the motion comes from, written down and tried.
Card {
    id: card

    required property FeedPresenter feed

    // Here, because a text field lets the key through to whatever is behind it.
    Keys.onEscapePressed: card.feed.editing = false

    implicitHeight: column.implicitHeight + 2 * Tokens.gap24

    ColumnLayout {
        id: column
        anchors.fill: parent
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap12
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Fly by the motion of a simulator or receiver")
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Write the format (json, nmea or gdl90), a colon, and where it comes in: a UDP port as in json:49100, a program as in nmea:tcp:localhost:10110, or a serial line as in nmea:serial:/dev/ttyUSB0:4800.")
            color: Tokens.quiet
        }
        RowLayout {
            spacing: Tokens.gap12
            TextLine {
                id: line
                Layout.fillWidth: true
                Layout.maximumWidth: 520 * Tokens.textScale
                label: qsTr("Feed")
                text: card.feed.chosen
                onSubmitted: card.feed.listen(line.text)
                Component.onCompleted: line.forceActiveFocus()
            }
            ActionButton {
                text: card.feed.listening ? qsTr("Stop trying") : qsTr("Try it")
                hint: qsTr("Shows what comes in")
                onClicked: card.feed.listening ? card.feed.stop() : card.feed.listen(line.text)
            }
        }
        NoticeLine {
            visible: card.feed.problem !== ""
            Layout.fillWidth: true
            verdict: Verdict.Wrong
            text: card.feed.problem
        }
        PlainText {
            visible: card.feed.listening
            Layout.fillWidth: true
            text: card.feed.heard
        }
        RowLayout {
            spacing: Tokens.gap12
            ActionButton {
                text: qsTr("Use this feed")
                primary: true
                enabled: line.text !== ""
                onClicked: card.feed.choose(line.text)
            }
            ActionButton {
                text: qsTr("Use the practice aircraft")
                onClicked: card.feed.choose("")
            }
            ActionButton {
                text: qsTr("Cancel")
                onClicked: card.feed.editing = false
            }
        }
    }
}
