import QtQuick
import QtQuick.Layouts
import Flowhand

/// Playing, the marks A and B, and the ways from one place worth looking at to the next.
RowLayout {
    id: bar

    required property ReviewTimeline timeline

    spacing: Tokens.gap4

    ActionButton {
        primary: true
        text: bar.timeline.playing ? qsTr("Stop") : qsTr("Play")
        keyName: qsTr("Space")
        onClicked: bar.timeline.togglePlay()
    }
    QuietButton {
        text: qsTr("Slower")
        keyName: "S"
        onClicked: bar.timeline.slower()
    }
    PlainText {
        Layout.preferredWidth: 44 * Tokens.textScale
        horizontalAlignment: Text.AlignHCenter
        text: bar.timeline.paceText
        wrapMode: Text.NoWrap
    }
    QuietButton {
        text: qsTr("Faster")
        keyName: "D"
        onClicked: bar.timeline.faster()
    }
    QuietButton {
        text: bar.timeline.looping ? qsTr("No loop") : qsTr("Loop")
        keyName: "L"
        Accessible.description: qsTr("Plays from A to B over and over, or what is shown")
        onClicked: bar.timeline.toggleLoop()
    }
    QuietButton {
        text: "A"
        Accessible.name: qsTr("Mark A")
        onClicked: bar.timeline.setA()
    }
    QuietButton {
        text: "B"
        Accessible.name: qsTr("Mark B")
        onClicked: bar.timeline.setB()
    }
    PlainText {
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        text: bar.timeline.marksText
        color: Tokens.info
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    JumpPair {
        name: qsTr("Deviation")
        keyName: qsTr("PgDn")
        onBackAsked: bar.timeline.previousDeviation()
        onOnAsked: bar.timeline.nextDeviation()
    }
    JumpPair {
        name: qsTr("Step")
        keyName: "K"
        onBackAsked: bar.timeline.previousStep()
        onOnAsked: bar.timeline.nextStep()
    }
    JumpPair {
        name: qsTr("Change")
        keyName: "."
        onBackAsked: bar.timeline.previousChange()
        onOnAsked: bar.timeline.nextChange()
    }
    QuietButton {
        text: qsTr("Fit")
        keyName: "F"
        onClicked: bar.timeline.fit()
    }
}
