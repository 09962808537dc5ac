import QtQuick
import Flowhand

/// What can be done with the chosen control: the next thing first, the others small; while something is done, how to go
/// on or stop.
Flow {
    id: actions

    required property BenchPresenter bench
    required property bool busy
    signal waysAsked
    signal valuesAsked

    readonly property list<string> verbs: ["", qsTr("Wire it"), qsTr("Calibrate it"), qsTr("Check it again"), qsTr("Measure its signal"), qsTr("Check walk of all controls")]
    readonly property list<string> keyNames: ["", "W", "C", "R", "M", "K"]

    spacing: Tokens.gap8

    ActionButton {
        visible: !actions.busy
        primary: true
        text: actions.verbs[actions.bench.advice]
        keyName: qsTr("Return")
        onClicked: actions.bench.takeAdvice()
    }
    Repeater {
        model: [BenchPresenter.Wire, BenchPresenter.Calibrate, BenchPresenter.Check, BenchPresenter.Measure, BenchPresenter.Walk]
        QuietButton {
            required property int modelData
            // The snapshot says anew what can be begun.
            visible: !actions.busy && modelData !== actions.bench.advice && (actions.bench.chosen, actions.bench.wired, actions.bench.calibratable, actions.bench.canBegin(modelData))
            height: 40
            text: modelData === BenchPresenter.Wire && actions.bench.wired ? qsTr("Wire it anew") : actions.verbs[modelData]
            keyName: actions.keyNames[modelData]
            onClicked: actions.bench.begin(modelData)
        }
    }
    QuietButton {
        visible: !actions.busy
        height: 40
        text: qsTr("Wire another way")
        keyName: "O"
        Accessible.description: qsTr("Two controls on one lever, two axes for one control, contacts, encoders")
        onClicked: actions.waysAsked()
    }
    QuietButton {
        visible: !actions.busy && actions.bench.valuesExample !== ""
        height: 40
        text: qsTr("Give true values")
        keyName: "V"
        Accessible.description: qsTr("Calibrate to angles that you measured")
        onClicked: actions.valuesAsked()
    }
    ActionButton {
        visible: actions.busy && (actions.bench.task !== BenchPresenter.Wire || actions.bench.question)
        primary: true
        text: actions.bench.question ? qsTr("Yes, both") : actions.bench.task === BenchPresenter.Walk ? qsTr("Leave this control out") : qsTr("Done, go on")
        keyName: qsTr("Return")
        onClicked: actions.bench.next()
    }
    ActionButton {
        visible: actions.busy
        text: qsTr("Stop")
        keyName: qsTr("Esc")
        onClicked: actions.bench.cancel()
    }
}
