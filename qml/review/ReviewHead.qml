import QtQuick
import QtQuick.Layouts
import Flowhand

/// Which run it is, how it ended, and what went well.
GridLayout {
    id: head

    required property RunReview run
    signal closed

    columns: 3
    columnSpacing: Tokens.gap12
    rowSpacing: Tokens.gap4

    QuietButton {
        text: qsTr("Runs")
        keyName: qsTr("Esc")
        Accessible.description: qsTr("Back to the stored runs")
        onClicked: head.closed()
    }
    RowLayout {
        Layout.fillWidth: true
        spacing: Tokens.gap12
        PlainText {
            Layout.maximumWidth: head.width * 0.4
            text: head.run.title
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.fillWidth: true
            text: head.run.subtitle
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
    }
    RowLayout {
        spacing: Tokens.gap8
        VerdictSymbol {
            Layout.preferredWidth: Tokens.strongSize
            Layout.preferredHeight: Tokens.strongSize
            verdict: head.run.verdict
            color: Tokens.verdictColor(verdict)
            ground: Tokens.ground
        }
        PlainText {
            text: head.run.scoreText !== "" ? qsTr("%1 of 100 points, %2").arg(head.run.scoreText).arg(head.run.verdictText.toLowerCase()) : head.run.verdictText
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
            wrapMode: Text.NoWrap
        }
    }
    NoticeLine {
        Layout.columnSpan: 3
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        verdict: Verdict.Done
        text: head.run.wentWell
    }
    NoticeLine {
        visible: text !== ""
        Layout.columnSpan: 3
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        verdict: Verdict.Unsure
        text: head.run.damage
    }
}
