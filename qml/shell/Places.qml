import QtQuick
import QtQuick.Layouts
import Flowhand

/// The place that is shown, and the list of keys beside it.
RowLayout {
    id: places

    required property FlyPresenter fly
    required property BenchPresenter bench
    required property Sound sound
    required property Settings settings
    required property ReviewPresenter review
    required property ProgressPresenter progress
    required property LibraryPresenter library
    required property ManualPresenter manual
    required property KeyChoice keys
    /// 0 Fly, 1 Bench, 2 Review, 3 Progress, 4 Library, 5 the manual, -1 the settings.
    required property int shown
    required property bool keysShown
    /// A run is not going on.
    required property bool mayLeave
    property alias chosenRow: flyPlace.chosenRow
    readonly property alias hasRun: flyPlace.hasRun

    /// Another one is asked for.
    signal placeAsked(place: int)
    signal manualClosed
    signal settingsClosed
    signal keysClosed

    // Devices are read only while the bench is looked at, or the library's controls to act on.
    onShownChanged: {
        if (shown !== 1)
            bench?.leave();
        if (shown !== 2)
            review?.leave();
        if (shown !== 4)
            library?.leave();
    }

    /// False when the key means nothing here. `key` is the usual one for what was pressed.
    function pressKey(key: int, modifiers: int, isRepeat: bool): bool {
        const isCommand = (modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier)) !== 0;
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

    spacing: Tokens.gap16

    FlyPlace {
        id: flyPlace
        visible: places.shown === 0
        focus: places.shown === 0
        Layout.fillWidth: true
        Layout.fillHeight: true
        fly: places.fly
        onBenchAsked: {
            places.placeAsked(1);
            places.bench.guide();
        }
        onSamplesAsked: {
            places.placeAsked(2);
            places.review.takeInSamples();
        }
    }
    PlaceLoader {
        id: benchPlace
        active: places.shown === 1
        sourceComponent: BenchPlace { bench: places.bench }
    }
    PlaceLoader {
        id: reviewPlace
        active: places.shown === 2
        sourceComponent: ReviewPlace {
            review: places.review
            onFlyAsked: places.placeAsked(0)
        }
    }
    PlaceLoader {
        id: progressPlace
        active: places.shown === 3
        sourceComponent: ProgressPlace {
            progress: places.progress
            onChooseAsked: places.placeAsked(0)
        }
    }
    PlaceLoader {
        id: libraryPlace
        active: places.shown === 4
        sourceComponent: LibraryPlace { library: places.library }
    }
    PlaceLoader {
        id: manualPlace
        active: places.shown === 5
        sourceComponent: ManualPlace {
            manual: places.manual
            onClosed: places.manualClosed()
        }
    }
    PlaceLoader {
        active: places.shown === -1
        sourceComponent: SettingsView {
            settings: places.settings
            keys: places.keys
            meter: places.bench.delay
            withRig: places.fly.withRig
            withRun: !places.mayLeave
            sound: places.sound
            onClosed: places.settingsClosed()
        }
    }
    KeySheet {
        visible: places.keysShown
        Layout.fillHeight: true
        Layout.preferredWidth: implicitWidth
        controlKeys: places.fly.panel.keys
        keys: places.keys
        onClosed: places.keysClosed()
    }
}
