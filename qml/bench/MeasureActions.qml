import QtQuick
import Flowhand

/// What can be done with the chosen control, in one row: the next thing first, the others small; while something is
/// done, how to go on or stop.
Flow {
    id: actions

    required property BenchPresenter bench
    required property bool busy
    signal waysAsked
    signal valuesAsked
    signal tolerancesAsked

    readonly property list<string> verbs: ["", qsTr("Wire it"), qsTr("Calibrate it"), qsTr("Check again"), qsTr("Measure it"), qsTr("Check walk")]
    readonly property list<string> hints: ["", qsTr("Finds the input that moves"), qsTr("Finds its ends, centre and gates"), qsTr("How far its calibration is off now"), qsTr("Noise, wear, bounce and timing of its signal"), qsTr("Confirms every control of the rig through its whole range")]
    readonly property list<string> keyNames: ["", "W", "C", "R", "M", "K"]

    spacing: Tokens.gap4

    ActionButton {
        visible: !actions.busy
        primary: true
        text: actions.verbs[actions.bench.advice]
        hint: actions.hints[actions.bench.advice]
        keyName: qsTr("Return")
        onClicked: actions.bench.takeAdvice()
    }
    QuietButton {
        visible: !actions.busy && actions.bench.basicsLeft > 0
        height: 40
        text: qsTr("Wire the basic set")
        keyName: "G"
        Accessible.description: qsTr("One control after the other: what steers, brakes, moves and reverses the aircraft, its flap and its gear")
        onClicked: actions.bench.guide()
    }
    Repeater {
        model: [BenchPresenter.Wire, BenchPresenter.Calibrate, BenchPresenter.Check, BenchPresenter.Measure, BenchPresenter.Walk]
        QuietButton {
            required property int modelData
            // The snapshot says anew what can be begun.
            visible: !actions.busy && modelData !== actions.bench.advice && (actions.bench.chosen, actions.bench.wired, actions.bench.calibratable, actions.bench.canBegin(modelData))
            height: 40
            text: modelData === BenchPresenter.Wire && actions.bench.wired ? qsTr("Wire anew") : actions.verbs[modelData]
            keyName: actions.keyNames[modelData]
            Accessible.description: actions.hints[modelData]
            onClicked: actions.bench.begin(modelData)
        }
    }
    QuietButton {
        visible: !actions.busy
        height: 40
        text: qsTr("Wire otherwise")
        keyName: "O"
        Accessible.description: qsTr("Two controls on one lever, two axes for one control, contacts, encoders")
        onClicked: actions.waysAsked()
    }
    QuietButton {
        visible: !actions.busy && actions.bench.valuesExample !== ""
        height: 40
        text: qsTr("True values")
        keyName: "V"
        Accessible.description: qsTr("Calibrate to angles that you measured")
        onClicked: actions.valuesAsked()
    }
    QuietButton {
        visible: !actions.busy
        height: 40
        text: qsTr("Tolerances")
        keyName: "T"
        Accessible.description: qsTr("How near to its ends and its centre a control must come in the check walk")
        onClicked: actions.tolerancesAsked()
    }
    ActionButton {
        visible: actions.busy && actions.bench.guided && !actions.bench.question
        primary: true
        text: qsTr("I do not have this one")
        keyName: qsTr("Return")
        onClicked: actions.bench.leaveOut()
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
