import QtQuick
import QtQuick.Layouts
import Flowhand

/// The run step by step beside another one: how far behind it was at each step, and what was not the same.
ColumnLayout {
    id: table

    required property ReviewPresenter review
    readonly property ReviewComparison comparison: review.comparison

    spacing: Tokens.gap4
    Component.onCompleted: comparison.enter()

    RowLayout {
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: table.comparison.title !== "" ? qsTr("Beside %1").arg(table.comparison.title)
                : table.comparison.looked && table.comparison.others.count === 0 ? qsTr("No other run of this flow is stored yet. Fly it again, and the two can be compared.")
                : ""
            color: Tokens.quiet
        }
        QuietButton {
            visible: table.comparison.others.count > 1
            text: qsTr("Another run")
            keyName: "X"
            onClicked: table.comparison.next()
        }
    }
    NoticeLine {
        visible: text !== ""
        Layout.fillWidth: true
        verdict: Verdict.Wrong
        text: table.comparison.failure
    }
    PlainText {
        visible: text !== ""
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        text: table.comparison.remarks
        font.pixelSize: Tokens.quietSize
        color: Tokens.late
    }
    CompareLine {
        visible: list.count > 0
        Layout.fillWidth: true
        Layout.rightMargin: 12
        isHead: true
        choosable: false
        title: qsTr("Step")
        done: qsTr("Done")
        other: qsTr("Other")
        behind: qsTr("Behind")
        ofIt: qsTr("Of it")
        difference: qsTr("What differed")
        step: -1
    }
    ListView {
        id: list
        Layout.fillWidth: true
        Layout.fillHeight: true
        clip: true
        keyNavigationEnabled: false
        model: table.comparison.steps
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: CompareLine {
            width: list.width - 12
            chosen: step >= 0 && step === table.review.run.chosenStep
            choosable: step >= 0
            onPicked: table.review.run.chooseStep(step)
        }
    }
    PlainText {
        visible: list.count > 0
        Layout.fillWidth: true
        Layout.leftMargin: Tokens.gap8
        text: qsTr("Behind: seconds after the other run since the start; of it: what came with this step. Time held is not counted.")
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
}
