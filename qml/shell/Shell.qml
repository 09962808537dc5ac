import QtQuick
import QtQuick.Layouts
import Flowhand

/// The frame of every place: the phase ribbon above, the training-only note below, and the keys beside.
FocusScope {
    id: shell

    required property FlyPresenter fly
    property bool keysShown: false
    signal themeAsked

    focus: true
    Keys.onPressed: event => {
        if (event.key === Qt.Key_F1) {
            keysShown = !keysShown;
            event.accepted = true;
        } else if (!event.isAutoRepeat) {
            event.accepted = place.pressKey(event.key);
        }
    }
    Keys.onReleased: event => {
        if (!event.isAutoRepeat)
            event.accepted = fly.panel.releaseKey(event.key);
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.ground
    }
    ColumnLayout {
        anchors.fill: parent
        spacing: 0
        PhaseRibbon {
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap24
            Layout.rightMargin: Tokens.gap24
            Layout.topMargin: Tokens.gap8
            phases: shell.fly.phases
            flows: shell.fly.flows
            chosen: shell.fly.stage === FlyPresenter.Choosing ? place.chosenRow : shell.fly.flowRow
            choosable: shell.fly.stage === FlyPresenter.Choosing
            onBeadChosen: row => place.chosenRow = row
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.margins: Tokens.isLow(shell.Window.height) ? Tokens.gap12 : Tokens.gap16
            spacing: Tokens.gap16
            FlyPlace {
                id: place
                focus: true
                Layout.fillWidth: true
                Layout.fillHeight: true
                fly: shell.fly
            }
            KeySheet {
                visible: shell.keysShown
                Layout.fillHeight: true
                Layout.preferredWidth: implicitWidth
                controlKeys: shell.fly.panel.keys
                onClosed: shell.keysShown = false
            }
        }
        Footer {
            Layout.fillWidth: true
            onKeysAsked: shell.keysShown = !shell.keysShown
            onThemeAsked: shell.themeAsked()
        }
    }
}
