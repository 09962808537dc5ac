import QtQuick
import QtQuick.Layouts
import Flowhand

/// The frame of every place: the places and the phase ribbon above, the training-only note below, and the keys beside.
FocusScope {
    id: shell

    required property FlyPresenter fly
    required property BenchPresenter bench
    required property Sound sound
    required property Settings settings
    required property ReviewPresenter review
    required property ProgressPresenter progress
    required property LibraryPresenter library
    required property ManualPresenter manual
    property bool keysShown: false
    /// In place of whatever place is shown.
    property bool settingsShown: false
    /// Where the manual leads back to.
    property int placeBefore: 0
    /// 0 Fly, 1 Bench, 2 Review, 3 Progress, 4 Library, 5 the manual, which has no tab.
    property int place: 0
    /// A run is not left by accident, and nothing beside it moves.
    readonly property bool mayLeave: fly.stage === FlyPresenter.FirstStart || fly.stage === FlyPresenter.Choosing || fly.stage === FlyPresenter.Ended

    function goTo(place: int): bool {
        if (mayLeave) {
            if (shell.place !== 5)
                placeBefore = shell.place;
            shell.place = place;
            settingsShown = false;
        }
        return mayLeave;
    }
    /// Nothing lies over a run that goes on.
    readonly property bool maySet: fly.stage !== FlyPresenter.Running
    onMaySetChanged: if (!maySet) settingsShown = false
    function toggleSettings(): bool {
        const is = maySet || settingsShown;
        if (is)
            settingsShown = !settingsShown;
        return is;
    }

    /// -1: the settings.
    readonly property int shown: settingsShown ? -1 : place
    Connections {
        target: shell.progress
        function onFlyAsked(aircraft: string, flow: string): void {
            if (shell.goTo(0) && shell.fly.find(aircraft, flow) >= 0)
                places.chosenRow = shell.fly.find(aircraft, flow);
        }
    }
    focus: true
    KeyChoice {
        id: keyChoice
        settings: shell.settings
        place: shell.shown
    }
    Binding {
        target: Tokens
        property: "keyChoice"
        value: keyChoice
    }

    /// False when the key means nothing here. `key` is the usual one for what was pressed.
    function pressKey(key: int, modifiers: int, isRepeat: bool): bool {
        if ((modifiers & Qt.ControlModifier) && key >= Qt.Key_1 && key <= Qt.Key_6)
            return goTo(key - Qt.Key_1);
        switch (key) {
        case Qt.Key_F1:
            keysShown = !keysShown;
            return true;
        case Qt.Key_F9:
            if (!isRepeat)
                sound.change();
            return true;
        case Qt.Key_F12:
            return isRepeat || toggleSettings();
        }
        return places.pressKey(key, modifiers, isRepeat);
    }
    Keys.onPressed: event => {
        const key = (event.modifiers & Qt.ControlModifier) ? event.key : keyChoice.usual(event.key);
        event.accepted = pressKey(key, event.modifiers, event.isAutoRepeat);
    }
    Keys.onReleased: event => {
        if (!event.isAutoRepeat && shell.shown === 0)
            event.accepted = fly.panel.releaseKey(keyChoice.usual(event.key));
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.ground
    }
    ColumnLayout {
        anchors.fill: parent
        spacing: 0
        Item {
            visible: shell.shown !== 0
            implicitHeight: placeBar.height + Tokens.gap4
        }
        PhaseRibbon {
            visible: shell.shown === 0
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap24
            Layout.rightMargin: Tokens.gap24
            // Large words of the places stand above the line, not on it.
            Layout.topMargin: placeBar.visible ? Math.max(Tokens.gap8, placeBar.height - 28) : Tokens.gap8
            phases: shell.fly.phases
            flows: shell.fly.flows
            chosen: shell.fly.stage === FlyPresenter.Choosing ? places.chosenRow : shell.fly.flowRow
            choosable: shell.fly.stage === FlyPresenter.Choosing
            onBeadChosen: row => places.chosenRow = row
        }
        Places {
            id: places
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.margins: Tokens.isLow(shell.Window.height) ? Tokens.gap12 : Tokens.gap16
            fly: shell.fly
            bench: shell.bench
            sound: shell.sound
            settings: shell.settings
            review: shell.review
            progress: shell.progress
            library: shell.library
            manual: shell.manual
            keys: keyChoice
            shown: shell.shown
            keysShown: shell.keysShown
            mayLeave: shell.mayLeave
            onPlaceAsked: place => shell.goTo(place)
            onManualClosed: shell.goTo(shell.placeBefore)
            onSettingsClosed: shell.settingsShown = false
            onKeysClosed: shell.keysShown = false
        }
        PassingNotice {
            Layout.fillWidth: true
            text: shell.settings.notice
            onDismissed: shell.settings.dismissNotice()
        }
        PassingNotice {
            Layout.fillWidth: true
            text: shell.sound.notice
            onDismissed: shell.sound.dismissNotice()
        }
        Footer {
            Layout.fillWidth: true
            sound: shell.sound
            mark: !places.hasRun || shell.shown !== 0 ? "" : shell.fly.demonstration ? qsTr("Scripted hands") : shell.fly.withRig ? "" : qsTr("Simulated hands")
            onKeysAsked: shell.keysShown = !shell.keysShown
            settingsOffered: shell.maySet
            manualOffered: shell.mayLeave
            onManualAsked: shell.goTo(shell.place === 5 ? shell.placeBefore : 5)
            onSettingsAsked: shell.toggleSettings()
        }
    }
    /// In the corner that the ribbon leaves free, where it is level.
    PlaceBar {
        id: placeBar
        x: Tokens.gap16
        y: 2
        visible: shell.mayLeave
        place: shell.shown
        onChosen: place => shell.goTo(place)
    }
}
