import QtQuick
import QtQuick.Layouts
import Flowhand

/// The chosen control: the quantity that is judged, large and over the last seconds; or what to do now.
Card {
    id: card

    required property BenchPresenter bench
    required property bool busy
    readonly property list<string> verbs: ["", qsTr("Wire it"), qsTr("Calibrate it"), qsTr("Measure its signal"), qsTr("Check walk of all controls")]

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap8
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                Layout.fillWidth: true
                text: card.busy ? card.bench.taskTitle : card.bench.chosenLabel
                font.pixelSize: Tokens.strongSize
                font.weight: Font.DemiBold
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                visible: card.busy
                text: card.bench.stageWords
                color: Tokens.quiet
                wrapMode: Text.NoWrap
            }
        }
        PlainText {
            visible: card.busy
            Layout.fillWidth: true
            text: card.bench.ask
            font.pixelSize: Tokens.titleSize
            font.weight: Font.DemiBold
            color: Tokens.accent
            maximumLineCount: 5
            elide: Text.ElideRight
        }
        PlainText {
            visible: !card.busy && card.bench.wired
            Layout.fillWidth: true
            text: card.bench.valueText
            font.pixelSize: Tokens.titleSize * 1.5
            font.weight: Font.DemiBold
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            visible: !card.busy && !card.bench.wired
            Layout.fillWidth: true
            text: qsTr("No input of the rig makes this control yet. Wire it: move the control when asked, and the input that moves is found.")
            color: Tokens.quiet
        }
        NoticeLine {
            visible: card.bench.taskOver && card.bench.outcome !== ""
            Layout.fillWidth: true
            verdict: card.bench.taskGood ? Verdict.Done : Verdict.Wrong
            text: card.bench.outcome
        }
        Rectangle {
            visible: card.bench.wired
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.minimumHeight: 40
            radius: Tokens.corner
            color: Tokens.sunken
            TracePlot {
                anchors.fill: parent
                anchors.margins: Tokens.gap8
                trace: card.bench.trace
                ink: Tokens.text
                axis: Tokens.line
                band: Tokens.accent
                Accessible.role: Accessible.Graphic
                Accessible.name: qsTr("The last ten seconds of %1, with the bands of the steps that judge it").arg(card.bench.chosenLabel)
            }
        }
        Item {
            visible: !card.bench.wired
            Layout.fillHeight: true
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            ActionButton {
                visible: !card.busy
                primary: true
                text: card.verbs[card.bench.advice]
                keyName: qsTr("Return")
                onClicked: card.bench.takeAdvice()
            }
            Repeater {
                model: [BenchPresenter.Wire, BenchPresenter.Calibrate, BenchPresenter.Measure, BenchPresenter.Walk]
                ActionButton {
                    required property int modelData
                    visible: !card.busy && modelData !== card.bench.advice && (modelData !== BenchPresenter.Calibrate || card.bench.calibratable)
                        && (modelData !== BenchPresenter.Measure || card.bench.wired)
                    text: modelData === BenchPresenter.Wire && card.bench.wired ? qsTr("Wire it anew") : card.verbs[modelData]
                    onClicked: card.bench.begin(modelData)
                }
            }
            ActionButton {
                visible: card.busy && card.bench.task !== BenchPresenter.Wire
                primary: true
                text: card.bench.task === BenchPresenter.Walk ? qsTr("Leave this control out") : qsTr("Done, go on")
                keyName: qsTr("Return")
                onClicked: card.bench.next()
            }
            ActionButton {
                visible: card.busy
                text: qsTr("Stop")
                keyName: qsTr("Esc")
                onClicked: card.bench.cancel()
            }
        }
    }
}
