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

    // Devices are read only while the bench is looked at, or the library's controls to act on.
    readonly property int shown: settingsShown ? -1 : place
    onShownChanged: {
        if (shown !== 1)
            bench?.leave();
        if (shown !== 2)
            review?.leave();
        if (shown !== 4)
            library?.leave();
    }
    Connections {
        target: shell.progress
        function onFlyAsked(aircraft: string, flow: string): void {
            if (shell.goTo(0) && shell.fly.find(aircraft, flow) >= 0)
                flyPlace.chosenRow = shell.fly.find(aircraft, flow);
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
        const isCommand = (modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier)) !== 0;
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
        switch (shown) {
        case 0: return !isRepeat && flyPlace.pressKey(key);
        case 1: return !isCommand && ((benchPlace.item as BenchPlace)?.pressKey(key) ?? false);
        case 2: return !isCommand && ((reviewPlace.item as ReviewPlace)?.pressKey(key, modifiers) ?? false);
        case 3: return !isCommand && ((progressPlace.item as ProgressPlace)?.pressKey(key) ?? false);
        case 4: return (libraryPlace.item as LibraryPlace)?.pressKey(key, modifiers) ?? false;
        case 5: return !isCommand && ((manualPlace.item as ManualPlace)?.pressKey(key) ?? false);
        default: return false;
        }
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
            chosen: shell.fly.stage === FlyPresenter.Choosing ? flyPlace.chosenRow : shell.fly.flowRow
            choosable: shell.fly.stage === FlyPresenter.Choosing
            onBeadChosen: row => flyPlace.chosenRow = row
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.margins: Tokens.isLow(shell.Window.height) ? Tokens.gap12 : Tokens.gap16
            spacing: Tokens.gap16
            FlyPlace {
                id: flyPlace
                visible: shell.shown === 0
                focus: shell.shown === 0
                Layout.fillWidth: true
                Layout.fillHeight: true
                fly: shell.fly
                onBenchAsked: {
                    shell.goTo(1);
                    shell.bench.guide();
                }
                onSamplesAsked: {
                    shell.goTo(2);
                    shell.review.takeInSamples();
                }
            }
            Loader {
                id: benchPlace
                active: shell.shown === 1
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: BenchPlace { bench: shell.bench }
            }
            Loader {
                id: reviewPlace
                active: shell.shown === 2
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: ReviewPlace {
                    review: shell.review
                    onFlyAsked: shell.goTo(0)
                }
            }
            Loader {
                id: progressPlace
                active: shell.shown === 3
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: ProgressPlace {
                    progress: shell.progress
                    onChooseAsked: shell.goTo(0)
                }
            }
            Loader {
                id: libraryPlace
                active: shell.shown === 4
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: LibraryPlace { library: shell.library }
            }
            Loader {
                id: manualPlace
                active: shell.shown === 5
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: ManualPlace {
                    manual: shell.manual
                    onClosed: shell.goTo(shell.placeBefore)
                }
            }
            Loader {
                active: shell.settingsShown
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: SettingsView {
                    settings: shell.settings
                    keys: keyChoice
                    meter: shell.bench.delay
                    withRig: shell.fly.withRig
                    withRun: !shell.mayLeave
                    sound: shell.sound
                    onClosed: shell.settingsShown = false
                }
            }
            KeySheet {
                visible: shell.keysShown
                Layout.fillHeight: true
                Layout.preferredWidth: implicitWidth
                controlKeys: shell.fly.panel.keys
                keys: keyChoice
                onClosed: shell.keysShown = false
            }
        }
        PassingNotice {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap16
            Layout.rightMargin: Tokens.gap8
            Layout.bottomMargin: Tokens.gap4
            text: shell.settings.notice
            onDismissed: shell.settings.dismissNotice()
        }
        PassingNotice {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap16
            Layout.rightMargin: Tokens.gap8
            Layout.bottomMargin: Tokens.gap4
            text: shell.sound.notice
            onDismissed: shell.sound.dismissNotice()
        }
        Footer {
            Layout.fillWidth: true
            sound: shell.sound
            mark: !flyPlace.hasRun || shell.shown !== 0 ? "" : shell.fly.demonstration ? qsTr("Scripted hands") : shell.fly.withRig ? "" : qsTr("Simulated hands")
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
