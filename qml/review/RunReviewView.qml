import QtQuick
import QtQuick.Layouts
import Flowhand

/// A run that is gone through: what went well in one line, what did not, the evidence, and the run along its time.
ReviewView {
    id: view

    readonly property RunReview run: review.run
    readonly property ReviewTimeline timeline: run.timeline
    property int panel: PanelCard.Deviations
    property bool cockpitShown: height > 640 * Tokens.textScale

    function pressKey(key: int, modifiers: int): bool {
        if (panelCard.pressKey(key) || keys.press(key, modifiers))
            return true;
        switch (key) {
        case Qt.Key_Escape:
            if (review.notes.writing)
                review.notes.cancel();
            else
                review.close();
            return true;
        case Qt.Key_N:
            review.noteHere();
            return true;
        case Qt.Key_Q:
            return beginNote(ReviewNotes.Account);
        case Qt.Key_O:
            return beginNote(ReviewNotes.Objective);
        case Qt.Key_P:
            return beginNote(ReviewNotes.Practice);
        case Qt.Key_U:
            review.ruleOnChosen();
            return true;
        case Qt.Key_W:
            review.causeOfChosen();
            return true;
        case Qt.Key_X:
            if (panel !== PanelCard.Compare)
                return false;
            review.comparison.next();
            return true;
        case Qt.Key_E:
            panel = PanelCard.Run;
            review.exportAs(ReviewPresenter.Page);
            return true;
        case Qt.Key_V:
            cockpitShown = !cockpitShown;
            return true;
        default:
            return false;
        }
    }

    function beginNote(kind: int): bool {
        panel = PanelCard.Notes;
        review.notes.begin(kind);
        return true;
    }

    TimelineKeys {
        id: keys
        timeline: view.timeline
    }
    // What was written in has the keyboard no more once it is kept or left.
    Connections {
        target: view.review.notes
        function onDraftChanged(): void {
            if (!view.review.notes.writing)
                home.forceActiveFocus();
        }
    }
    Item {
        id: home
        focus: true
    }
    FrameAnimation {
        running: view.timeline.playing
        onTriggered: view.timeline.advance(frameTime)
    }
    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap8
        ReviewHead {
            Layout.fillWidth: true
            run: view.run
            onClosed: view.review.close()
        }
        OverviewStrip {
            Layout.fillWidth: true
            Layout.preferredHeight: Tokens.isLow(view.Window.height) ? 48 : 64
            timeline: view.timeline
            ink: inks
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap12
            PanelCard {
                id: panelCard
                Layout.fillHeight: true
                Layout.fillWidth: false
                Layout.preferredWidth: Math.min(view.width * (panelCard.wide ? 0.56 : 0.36), (panelCard.wide ? 720 : 400) * Tokens.textScale)
                review: view.review
                panel: view.panel
                onPanelAsked: panel => view.panel = panel
            }
            ColumnLayout {
                Layout.fillWidth: true
                Layout.fillHeight: true
                spacing: Tokens.gap8
                LanesCard {
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    run: view.run
                    ink: inks
                }
                CockpitStrip {
                    visible: view.cockpitShown
                    Layout.fillWidth: true
                    run: view.run
                }
            }
        }
        PlayBar {
            Layout.fillWidth: true
            timeline: view.timeline
        }
    }
    LaneInk {
        id: inks
        ground: Tokens.raised
        text: Tokens.text
        quiet: Tokens.quiet
        line: Tokens.line
        accent: Tokens.accent
        done: Tokens.done
        late: Tokens.late
        wrong: Tokens.wrong
        unsure: Tokens.unsure
        info: Tokens.info
        family: Tokens.family
        size: Tokens.quietSize
    }
}
