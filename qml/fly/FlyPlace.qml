import QtQuick
import Flowhand

/// The Fly place: whatever its stage wants to be shown, and the keys that go with it.
FocusScope {
    id: place

    required property FlyPresenter fly
    /// The flow that is looked at before one is flown.
    property int chosenRow: 0
    signal samplesAsked
    signal benchAsked
    /// The on-screen cockpit; where there is hardware, or very little room, only when asked for.
    property bool panelShown: !fly.withRig && height > 460 * Tokens.textScale

    onChosenRowChanged: fly.look(chosenRow)

    Connections {
        target: place.fly
        function onOffered(row: int): void {
            place.chosenRow = row;
        }
        function onGroupChanged(): void {
            place.chosenRow = 0;
            place.fly.look(0);
        }
    }

    readonly property bool isOnTheWay: fly.stage === FlyPresenter.Running || fly.stage === FlyPresenter.Held
    readonly property bool hasRun: isOnTheWay || fly.stage === FlyPresenter.SetUp

    /// False when the key means nothing here.
    function pressKey(key: int): bool {
        switch (key) {
        case Qt.Key_Return:
        case Qt.Key_Enter:
            return (loader.item as StageView)?.primaryAction() ?? false;
        case Qt.Key_F2:
            if (fly.stage === FlyPresenter.Held)
                fly.resume();
            else if (fly.stage === FlyPresenter.Running)
                fly.hold();
            return isOnTheWay;
        case Qt.Key_F3:
            if (isOnTheWay)
                fly.repeat();
            return isOnTheWay;
        case Qt.Key_F7:
            if (isOnTheWay)
                fly.jump.open ? fly.closeJump() : fly.openJump();
            return isOnTheWay;
        case Qt.Key_F10:
            if (isOnTheWay)
                fly.beginNote();
            return isOnTheWay;
        case Qt.Key_F4:
            if (hasRun)
                panelShown = !panelShown;
            return hasRun;
        case Qt.Key_F8:
            if (hasRun)
                fly.stop();
            return hasRun;
        case Qt.Key_Escape:
            if (fly.note.failure !== "") {
                fly.note.cancel();
                return true;
            }
            if (!isOnTheWay && fly.stage !== FlyPresenter.FirstStart)
                fly.leave();
            return !isOnTheWay;
        default:
            return hasRun && fly.panel.pressKey(key);
        }
    }

    function viewOf(stage: int): Component {
        switch (stage) {
        case FlyPresenter.FirstStart: return firstStart;
        case FlyPresenter.SetUp: return setUp;
        case FlyPresenter.Running:
        case FlyPresenter.Held: return run;
        case FlyPresenter.Ended: return debrief;
        default: return choose;
        }
    }

    Loader {
        id: loader
        anchors.fill: parent
        focus: true
        sourceComponent: place.viewOf(place.fly.stage)
    }
    Component {
        id: firstStart
        FirstStartView {
            fly: place.fly
            onSamplesAsked: place.samplesAsked()
            onBenchAsked: place.benchAsked()
        }
    }
    Component {
        id: choose
        ChooseView {
            fly: place.fly
            chosenRow: place.chosenRow
            onRowChosen: row => place.chosenRow = row
            Component.onCompleted: place.fly.look(place.chosenRow)
        }
    }
    Component {
        id: setUp
        SetUpView {
            fly: place.fly
            panelShown: place.panelShown
        }
    }
    Component {
        id: run
        RunView {
            fly: place.fly
            panelShown: place.panelShown
            onPanelAsked: place.panelShown = !place.panelShown
        }
    }
    Component {
        id: debrief
        DebriefView { fly: place.fly }
    }
}
