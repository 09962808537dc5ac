import QtQuick
import QtQuick.Layouts
import Flowhand

/// A run as it goes. Nothing here moves that does not have to.
StageView {
    id: view

    required property bool panelShown
    readonly property bool isHeld: fly.stage === FlyPresenter.Held
    signal panelAsked

    function primaryAction(): bool {
        if (fly.jump.open)
            fly.jumpToPicked();
        else if (isHeld)
            fly.resume();
        return isHeld;
    }

    Item {
        id: home
        focus: true
    }
    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        Loader {
            id: noteBar
            active: view.fly.note.writing || view.fly.note.failure !== ""
            visible: active
            Layout.fillWidth: true
            sourceComponent: NoteBar {
                note: view.fly.note
                onClosed: home.forceActiveFocus()
            }
        }
        HoldBar {
            visible: view.isHeld || view.fly.run.freshNotices.count > 0 || view.fly.run.toMatch.count > 0
            Layout.fillWidth: true
            fly: view.fly
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap12
            DueCard {
                Layout.fillWidth: true
                Layout.fillHeight: true
                run: view.fly.run
                demonstration: view.fly.demonstration
                held: view.isHeld
                withGround: view.fly.ground.shown
            }
            ColumnLayout {
                Layout.fillHeight: true
                Layout.fillWidth: false
                Layout.preferredWidth: Math.min(380 * Tokens.textScale, view.width * 0.34)
                spacing: Tokens.gap12
                GroundCard {
                    visible: view.fly.ground.shown && !view.panelShown && !view.fly.jump.open
                    Layout.fillWidth: true
                    Layout.preferredHeight: Math.min(view.width, view.height) * 0.36
                    ground: view.fly.ground
                    run: view.fly.run
                }
                GuardList {
                    visible: view.fly.run.guards.count > 0
                    Layout.fillWidth: true
                    guards: view.fly.run.guards
                }
                Loader {
                    active: view.fly.jump.open
                    visible: active
                    focus: active
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    sourceComponent: JumpCard { fly: view.fly }
                }
                StepList {
                    visible: !view.fly.jump.open
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    Layout.preferredHeight: 4
                    title: qsTr("Next")
                    emptyText: view.fly.run.comingText
                    steps: view.fly.run.coming
                }
                StepList {
                    visible: !view.fly.jump.open
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    Layout.preferredHeight: 5
                    title: view.fly.run.scoreText === "" ? qsTr("So far: %1 of %2 steps").arg(view.fly.run.stepsOver).arg(view.fly.run.stepsAll) : qsTr("So far: %1 of %2 steps; score %3").arg(view.fly.run.stepsOver).arg(view.fly.run.stepsAll).arg(view.fly.run.scoreText)
                    emptyText: qsTr("No step is over yet")
                    steps: view.fly.run.over
                    withVerdict: true
                }
            }
        }
        MotionStrip {
            Layout.fillWidth: true
            fly: view.fly
            panelShown: view.panelShown
            onPanelAsked: view.panelAsked()
        }
        RowLayout {
            // Hands that write move nothing on screen; a low window has no room for both.
            visible: view.panelShown && !(noteBar.active && Tokens.isLow(view.Window.height))
            spacing: Tokens.gap12
            ControlPanel {
                id: panel
                Layout.fillWidth: true
                panel: view.fly.panel
            }
            GroundCard {
                visible: view.fly.ground.shown
                Layout.preferredHeight: panel.implicitHeight
                ground: view.fly.ground
                run: view.fly.run
            }
        }
    }
}
