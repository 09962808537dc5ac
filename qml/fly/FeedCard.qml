import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where the motion comes from, written down and tried.
Card {
    id: card

    required property FeedPresenter feed

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
            visible: card.feed.listening && card.feed.readings.count === 0
            Layout.fillWidth: true
            text: card.feed.heard
        }
        RowLayout {
            visible: card.feed.readings.count > 0
            spacing: Tokens.gap32
            Repeater {
                model: card.feed.readings
                Reading {}
            }
        }
        PlainText {
            visible: card.feed.values !== ""
            Layout.fillWidth: true
            text: qsTr("It says: %1.").arg(card.feed.values)
        }
        NoticeLine {
            visible: card.feed.missing !== ""
            Layout.fillWidth: true
            text: qsTr("It does not say: %1. Which steps cannot be judged without is told before each start.").arg(card.feed.missing)
        }
        NoticeLine {
            visible: card.feed.counts !== ""
            Layout.fillWidth: true
            verdict: Verdict.Unsure
            text: qsTr("Not taken: %1.").arg(card.feed.counts)
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
