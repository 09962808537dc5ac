import QtQuick
import QtQuick.Layouts
import Flowhand

/// A run that is over: passed or not, what it cost, and each step.
StageView {
    id: view

    readonly property DebriefPresenter debrief: fly.debrief

    function primaryAction(): bool {
        fly.again();
        return true;
    }

    RowLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        ScoreCard {
            Layout.fillHeight: true
            Layout.fillWidth: false
            Layout.preferredWidth: Math.min(360 * Tokens.textScale, view.width * 0.32)
            fly: view.fly
        }
        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap12
            HappenedCard {
                visible: view.fly.scenarioTitle !== ""
                Layout.fillWidth: true
                happened: view.debrief.happened
            }
            LedgerCard {
                Layout.fillWidth: true
                Layout.preferredHeight: Math.min(implicitHeight, view.height * (view.fly.scenarioTitle !== "" ? 0.36 : 0.45))
                ledger: view.debrief.ledger
                scored: view.debrief.scored
            }
            StepTable {
                Layout.fillWidth: true
                Layout.fillHeight: true
                steps: view.debrief.steps
            }
        }
    }
}
