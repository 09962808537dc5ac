import QtQuick
import QtQuick.Layouts
import Flowhand

/// What is known of the chosen step or guard: its separate times, what was asked and what it was, what went on.
Rectangle {
    id: view

    required property ReviewPresenter review
    readonly property RunReview run: review.run

    radius: Tokens.corner
    color: Tokens.sunken
    implicitHeight: column.implicitHeight + list.contentHeight + 2 * Tokens.gap12

    ColumnLayout {
        id: column
        anchors.fill: parent
        anchors.margins: Tokens.gap12
        anchors.bottomMargin: Tokens.gap8
        spacing: Tokens.gap4
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            VerdictSymbol {
                Layout.alignment: Qt.AlignTop
                Layout.topMargin: 2
                Layout.preferredWidth: Tokens.bodySize + 1
                Layout.preferredHeight: Tokens.bodySize + 1
                verdict: view.run.chosenVerdict
                color: Tokens.verdictColor(verdict)
                ground: Tokens.sunken
            }
            PlainText {
                Layout.fillWidth: true
                text: view.run.chosenTitle
                font.weight: Font.DemiBold
                maximumLineCount: 2
                elide: Text.ElideRight
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: view.run.chosenWord
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            maximumLineCount: 3
            elide: Text.ElideRight
        }
        Flow {
            visible: view.run.chosenDeviation >= 0 && view.review.notes.hasAccount
            Layout.fillWidth: true
            spacing: 2
            QuietButton {
                text: qsTr("Ruling")
                keyName: "U"
                Accessible.description: qsTr("The instructor's word on it, with its reason; the score stays as it is")
                onClicked: view.review.ruleOnChosen()
            }
            QuietButton {
                text: qsTr("Cause")
                keyName: "W"
                Accessible.description: qsTr("Why it happened, as the instructor sees it")
                onClicked: view.review.causeOfChosen()
            }
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            keyNavigationEnabled: false
            model: view.run.evidence
            ThinScrollBar.vertical: ThinScrollBar {}
            delegate: EvidenceLine {
                width: list.width - 12
                onPicked: view.run.timeline.hold(time)
            }
        }
    }
}
