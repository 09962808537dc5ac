import QtQuick
import QtQuick.Layouts
import Flowhand

/// What is listed beside the timeline: one of several panels, and the evidence of what is chosen there.
Card {
    id: card

    enum Panel { Deviations, Steps, Notes, Compare, Signals, Run }

    required property ReviewPresenter review
    required property int panel
    readonly property RunReview run: review.run
    readonly property bool wide: panel === PanelCard.Compare
    readonly property bool hasEvidence: (panel === PanelCard.Deviations || panel === PanelCard.Steps) && run.chosenTitle !== ""
    readonly property list<string> names: [qsTr("Deviations"), qsTr("Steps"), qsTr("Notes"), qsTr("Compare"), qsTr("Signals"), qsTr("Run")]
    readonly property list<string> keyNames: ["F2", "F3", "F4", "F5", "F6", "F8"]
    signal panelAsked(panel: int)

    function panelOfKey(key: int): int {
        switch (key) {
        case Qt.Key_F2: return PanelCard.Deviations;
        case Qt.Key_F3: return PanelCard.Steps;
        case Qt.Key_F4: return PanelCard.Notes;
        case Qt.Key_F5: return PanelCard.Compare;
        case Qt.Key_F6: return PanelCard.Signals;
        case Qt.Key_F8: return PanelCard.Run;
        default: return -1;
        }
    }

    /// False when the key means nothing here.
    function pressKey(key: int): bool {
        if (panelOfKey(key) >= 0)
            panelAsked(panelOfKey(key));
        else if (key >= Qt.Key_0 && key <= Qt.Key_9)
            return run.pressFigure(key - Qt.Key_0);
        else if (key === Qt.Key_Down || key === Qt.Key_Up)
            return move(key === Qt.Key_Down ? 1 : -1);
        else
            return false;
        return true;
    }

    function move(by: int): bool {
        if (panel === PanelCard.Steps || panel === PanelCard.Compare)
            run.chooseStep(Math.max(0, Math.min(run.chosenStep + by, run.steps.count - 1)));
        else if (panel === PanelCard.Deviations)
            run.chooseDeviation(Math.max(0, Math.min(run.chosenDeviation + by, run.deviations.count - 1)));
        else
            return false;
        return true;
    }

    function viewOf(panel: int): Component {
        switch (panel) {
        case PanelCard.Steps: return steps;
        case PanelCard.Notes: return notes;
        case PanelCard.Compare: return compare;
        case PanelCard.Signals: return signals;
        case PanelCard.Run: return remarks;
        default: return deviations;
        }
    }

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap8
        spacing: Tokens.gap8
        Flow {
            Layout.fillWidth: true
            spacing: 2
            Repeater {
                model: card.names
                TabButton {
                    required property int index
                    required property string modelData
                    text: modelData
                    size: Tokens.quietSize
                    leftPadding: 6
                    rightPadding: 6
                    isHere: index === card.panel
                    Accessible.description: card.keyNames[index]
                    onClicked: card.panelAsked(index)
                }
            }
        }
        Loader {
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            sourceComponent: card.viewOf(card.panel)
        }
        Loader {
            Layout.fillWidth: true
            visible: active
            active: card.review.notes.writing
            sourceComponent: NoteEditor { notes: card.review.notes }
        }
        EvidenceView {
            visible: card.hasEvidence && !card.review.notes.writing
            Layout.fillWidth: true
            Layout.preferredHeight: Math.min(implicitHeight, card.height * 0.5)
            review: card.review
        }
    }
    Component {
        id: deviations
        DeviationList { run: card.run }
    }
    Component {
        id: steps
        ReviewStepList { run: card.run }
    }
    Component {
        id: notes
        NotesPanel { review: card.review }
    }
    Component {
        id: compare
        CompareTable { review: card.review }
    }
    Component {
        id: signals
        SignalChooser { timeline: card.run.timeline }
    }
    Component {
        id: remarks
        RunRemarks { review: card.review }
    }
}
