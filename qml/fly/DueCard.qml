import QtQuick
import QtQuick.Layouts
import Flowhand

/// The due step, readable from a metre, with its control as it stands and as it should.
Card {
    id: card

    required property RunPresenter run
    property bool demonstration: false
    readonly property int dueSize: Tokens.dueSize(card.Window.height)

    ColumnLayout {
        id: words
        anchors.left: parent.left
        anchors.top: parent.top
        anchors.bottom: parent.bottom
        anchors.right: drawings.left
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: card.run.saying !== "" ? qsTr("%1: “%2”").arg(card.run.sayingBy).arg(card.run.saying)
                : card.run.hasDue ? card.run.dueOwn ? qsTr("Now, by you") : qsTr("Now, by the %1").arg(card.run.dueWho)
                : qsTr("Nothing is due")
            font.pixelSize: Tokens.strongSize
            font.capitalization: Font.MixedCase
            color: card.run.saying !== "" ? Tokens.info : Tokens.quiet
            elide: Text.ElideRight
            maximumLineCount: 2
        }
        PlainText {
            Layout.fillWidth: true
            text: card.run.hasDue ? card.run.dueTitle : card.run.nextTitle !== "" ? qsTr("Next: %1").arg(card.run.nextTitle) : ""
            font.pixelSize: card.run.hasDue ? card.dueSize : Tokens.titleSize
            font.weight: Font.DemiBold
            lineHeight: 0.95
            color: card.run.dueOwn || !card.run.hasDue ? Tokens.text : Tokens.quiet
            elide: Text.ElideRight
            maximumLineCount: 3
        }
        TimeLine {
            visible: card.run.hasDue && card.run.dueOwn
            Layout.fillWidth: true
            share: card.run.dueShare
            onTime: card.run.onTimeShare
        }
        PlainText {
            visible: card.run.dueReply !== ""
            Layout.fillWidth: true
            text: qsTr("Answer: “%1”").arg(card.run.dueReply)
            font.pixelSize: Tokens.titleSize
        }
        Repeater {
            model: card.run.targets
            TargetLine {
                Layout.fillWidth: true
                size: Math.round(Tokens.titleSize * 0.9)
            }
        }
        PlainText {
            visible: card.run.dueWhy !== ""
            Layout.fillWidth: true
            text: card.run.dueWhy
            color: Tokens.quiet
        }
        Item {
            Layout.fillHeight: true
        }
        VerdictLine {
            Layout.fillWidth: true
            verdict: card.run.verdict
            word: card.run.verdictWord
            title: card.run.verdictTitle
        }
    }
    Row {
        id: drawings
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.bottom: parent.bottom
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap24
        Repeater {
            model: card.run.targets
            TargetDrawing {
                height: drawings.height
            }
        }
    }
}
