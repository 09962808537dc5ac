import QtQuick
import QtQuick.Layouts
import Flowhand

/// The frame of every place: the places and the phase ribbon above, the training-only note below, and the keys beside.
FocusScope {
    id: shell

    required property FlyPresenter fly
    required property BenchPresenter bench
    required property Sound sound
    required property ReviewPresenter review
    property bool keysShown: false
    /// 0 Fly, 1 Bench, 2 Review.
    property int place: 0
    /// A run is not left by accident, and nothing beside it moves.
    readonly property bool mayLeave: fly.stage === FlyPresenter.FirstStart || fly.stage === FlyPresenter.Choosing || fly.stage === FlyPresenter.Ended

    function goTo(place: int): bool {
        if (mayLeave)
            shell.place = place;
        return mayLeave;
    }
    signal themeAsked

    // Devices are read only while the bench is looked at.
    onPlaceChanged: {
        if (place !== 1)
            bench?.leave();
        if (place !== 2)
            review?.leave();
    }
    focus: true
    Keys.onPressed: event => {
        if (event.key === Qt.Key_F1) {
            keysShown = !keysShown;
            event.accepted = true;
        } else if (event.key === Qt.Key_F9 && !event.isAutoRepeat) {
            sound.change();
            event.accepted = true;
        } else if ((event.modifiers & Qt.ControlModifier) && event.key >= Qt.Key_1 && event.key <= Qt.Key_3) {
            event.accepted = goTo(event.key - Qt.Key_1);
        } else if (shell.place === 1) {
            const isCommand = (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier)) !== 0;
            event.accepted = !isCommand && ((benchPlace.item as BenchPlace)?.pressKey(event.key) ?? false);
        } else if (shell.place === 2) {
            const isCommand = (event.modifiers & (Qt.ControlModifier | Qt.AltModifier | Qt.MetaModifier)) !== 0;
            event.accepted = !isCommand && ((reviewPlace.item as ReviewPlace)?.pressKey(event.key, event.modifiers) ?? false);
        } else if (!event.isAutoRepeat) {
            event.accepted = flyPlace.pressKey(event.key);
        }
    }
    Keys.onReleased: event => {
        if (!event.isAutoRepeat && shell.place === 0)
            event.accepted = fly.panel.releaseKey(event.key);
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.ground
    }
    ColumnLayout {
        anchors.fill: parent
        spacing: 0
        Item {
            visible: shell.place !== 0
            implicitHeight: placeBar.height + Tokens.gap4
        }
        PhaseRibbon {
            visible: shell.place === 0
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap24
            Layout.rightMargin: Tokens.gap24
            Layout.topMargin: Tokens.gap8
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
                visible: shell.place === 0
                focus: shell.place === 0
                Layout.fillWidth: true
                Layout.fillHeight: true
                fly: shell.fly
            }
            Loader {
                id: benchPlace
                active: shell.place === 1
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: BenchPlace { bench: shell.bench }
            }
            Loader {
                id: reviewPlace
                active: shell.place === 2
                visible: active
                focus: active
                Layout.fillWidth: true
                Layout.fillHeight: true
                sourceComponent: ReviewPlace {
                    review: shell.review
                    onFlyAsked: shell.goTo(0)
                }
            }
            KeySheet {
                visible: shell.keysShown
                Layout.fillHeight: true
                Layout.preferredWidth: implicitWidth
                controlKeys: shell.fly.panel.keys
                place: shell.place
                onClosed: shell.keysShown = false
            }
        }
        RowLayout {
            visible: shell.sound.notice !== ""
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap16
            Layout.rightMargin: Tokens.gap8
            Layout.bottomMargin: Tokens.gap4
            spacing: Tokens.gap16
            NoticeLine {
                Layout.fillWidth: true
                text: shell.sound.notice
            }
            QuietButton {
                text: qsTr("Dismiss")
                onClicked: shell.sound.dismissNotice()
            }
        }
        Footer {
            Layout.fillWidth: true
            sound: shell.sound
            onKeysAsked: shell.keysShown = !shell.keysShown
            onThemeAsked: shell.themeAsked()
        }
    }
    /// In the corner that the ribbon leaves free, where it is level.
    PlaceBar {
        id: placeBar
        x: Tokens.gap16
        y: 2
        visible: shell.mayLeave
        place: shell.place
        onChosen: place => shell.goTo(place)
    }
}
