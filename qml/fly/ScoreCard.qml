import QtQuick
import QtQuick.Layouts
import Flowhand

/// The score, whether it is enough, and what to do next.
Card {
    id: card

    required property FlyPresenter fly
    readonly property DebriefPresenter debrief: fly.debrief

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap12
        Flickable {
            id: flick
            Layout.fillWidth: true
            Layout.fillHeight: true
            contentHeight: facts.implicitHeight
            clip: true
            ThinScrollBar.vertical: ThinScrollBar {}
            ColumnLayout {
                id: facts
                width: flick.width
                spacing: Tokens.gap12
                PlainText {
                    visible: card.fly.scenarioTitle !== ""
                    Layout.fillWidth: true
                    text: card.fly.scenarioTitle
                    color: Tokens.quiet
                }
                FlightParts {
                    visible: card.debrief.parts.count > 1
                    Layout.fillWidth: true
                    parts: card.debrief.parts
                    onPicked: part => card.debrief.choose(part)
                }
                PlainText {
                    visible: card.debrief.parts.count < 2
                    Layout.fillWidth: true
                    text: card.debrief.title
                    font.pixelSize: Tokens.strongSize
                    font.weight: Font.DemiBold
                }
                PlainText {
                    visible: card.debrief.scored
                    Layout.fillWidth: true
                    text: card.debrief.scoreText
                    font.pixelSize: Tokens.dueSize(card.Window.height) * (text.length > 5 ? 0.75 : 1.2)
                    font.weight: Font.DemiBold
                    lineHeight: 0.9
                    Accessible.name: qsTr("%1 of 100 points").arg(text)
                }
                PlainText {
                    visible: card.debrief.scored
                    Layout.fillWidth: true
                    text: qsTr("of 100 points")
                    color: Tokens.quiet
                }
                Row {
                    spacing: Tokens.gap12
                    VerdictSymbol {
                        anchors.verticalCenter: parent.verticalCenter
                        width: 28
                        height: 28
                        verdict: card.debrief.passed ? Verdict.Done : card.debrief.scored ? Verdict.Wrong : Verdict.LeftOut
                        color: Tokens.verdictColor(verdict)
                        ground: Tokens.raised
                    }
                    PlainText {
                        text: card.debrief.passed ? qsTr("Passed") : card.debrief.scored ? qsTr("Not passed") : qsTr("Not scored")
                        font.pixelSize: Tokens.titleSize
                        font.weight: Font.DemiBold
                    }
                }
                PlainText {
                    Layout.fillWidth: true
                    visible: text !== ""
                    text: card.debrief.whyNotPassed
                }
                PlainText {
                    Layout.fillWidth: true
                    text: card.fly.demonstration ? qsTr("A demonstration: scripted hands flew this.")
                        : card.fly.withRig ? qsTr("Flown on %1.").arg(card.fly.rigTitle) : qsTr("Flown on the screen: simulated hands.")
                    color: Tokens.quiet
                }
                PlainText {
                    Layout.fillWidth: true
                    text: qsTr("%1 points pass. From the first step to the last: %2. %3.").arg(card.debrief.targetText).arg(card.debrief.paceText).arg(card.debrief.storedText)
                    color: Tokens.quiet
                }
                NoticeList {
                    Layout.fillWidth: true
                    notices: card.fly.run.notices
                }
            }
        }
        ActionButton {
            Layout.fillWidth: true
            text: card.fly.demonstration ? qsTr("Now fly it yourself") : qsTr("Fly it again")
            primary: true
            keyName: qsTr("Return")
            onClicked: card.fly.again()
        }
        ActionButton {
            Layout.fillWidth: true
            text: card.fly.withScenarios ? qsTr("Choose another scenario") : qsTr("Choose another flow")
            keyName: qsTr("Esc")
            onClicked: card.fly.leave()
        }
    }
}
