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
            Layout.preferredWidth: Math.min(360 * Tokens.textScale, view.width * 0.32)
            fly: view.fly
        }
        ColumnLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap12
            LedgerCard {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredHeight: 2
                ledger: view.debrief.ledger
                scored: view.debrief.scored
            }
            StepTable {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredHeight: 3
                steps: view.debrief.steps
            }
        }
    }
}
