import QtQuick
import QtQuick.Layouts
import Flowhand

/// The stored runs, newest first: which to go through, and what they are marked with.
ReviewView {
    id: view

    signal flyAsked
    readonly property bool isEmpty: review.runs.count === 0

    function pressKey(key: int, modifiers: int): bool {
        switch (key) {
        case Qt.Key_Down:
            review.choose(review.chosen + 1);
            return true;
        case Qt.Key_Up:
            review.choose(review.chosen - 1);
            return true;
        case Qt.Key_Return:
        case Qt.Key_Enter:
            if (actions.isWriting)
                actions.tag();
            else if (isEmpty && review.listed && review.search === "" && !review.deletedShown)
                flyAsked();
            else
                review.open(review.chosen);
            return true;
        case Qt.Key_Escape:
            actions.isWriting = false;
            search.text = "";
            list.forceActiveFocus();
            return true;
        case Qt.Key_F:
            search.forceActiveFocus();
            return true;
        case Qt.Key_R:
            review.toggleReference();
            return true;
        case Qt.Key_T:
            actions.beginTag();
            return true;
        case Qt.Key_Delete:
            review.remove();
            return true;
        case Qt.Key_Z:
            review.undo();
            return true;
        case Qt.Key_S:
            if (review.samplesOffered)
                review.takeInSamples();
            return true;
        case Qt.Key_D:
            review.toggleDeleted();
            return true;
        default:
            return false;
        }
    }

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap16
            PlainText {
                Layout.fillWidth: true
                text: view.review.deletedShown ? qsTr("Deleted runs") : qsTr("Stored runs")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                text: qsTr("Search")
                color: Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            TextLine {
                id: search
                Layout.preferredWidth: 280 * Tokens.textScale
                label: qsTr("Search in flow, aircraft, rig, pilot, tags and notes")
                text: view.review.search
                onTextChanged: view.review.search = text
                onSubmitted: view.pressKey(Qt.Key_Return, 0)
            }
        }
        NoticeLine {
            visible: view.review.failure !== ""
            Layout.fillWidth: true
            verdict: Verdict.Wrong
            text: view.review.failure
        }
        Card {
            Layout.fillWidth: true
            Layout.fillHeight: true
            ListView {
                id: list
                anchors.fill: parent
                anchors.margins: Tokens.gap8
                focus: true
                visible: view.review.stage !== ReviewPresenter.Opening
                clip: true
                keyNavigationEnabled: false
                model: view.review.runs
                currentIndex: view.review.chosen
                highlightMoveDuration: 0
                ThinScrollBar.vertical: ThinScrollBar {}
                delegate: StoredRunLine {
                    required property int index
                    width: list.width - 12
                    chosen: index === view.review.chosen
                    onPicked: view.review.choose(index)
                    onOpened: view.review.open(index)
                }
            }
            ColumnLayout {
                anchors.centerIn: parent
                width: Math.min(parent.width - 2 * Tokens.gap24, 560 * Tokens.textScale)
                visible: view.isEmpty && view.review.listed
                spacing: Tokens.gap16
                PlainText {
                    Layout.fillWidth: true
                    horizontalAlignment: Text.AlignHCenter
                    text: view.review.search !== "" ? qsTr("No run has “%1” in its flow, aircraft, rig, pilot, tags or notes.").arg(view.review.search)
                        : view.review.deletedShown ? qsTr("No run was deleted.")
                        : qsTr("No run is stored yet. Fly a flow: its run is kept here by itself.")
                    color: Tokens.quiet
                }
                RowLayout {
                    Layout.alignment: Qt.AlignHCenter
                    visible: view.review.search === "" && !view.review.deletedShown
                    spacing: Tokens.gap12
                    ActionButton {
                        primary: true
                        text: qsTr("Choose a flow")
                        keyName: qsTr("Return")
                        onClicked: view.flyAsked()
                    }
                    SampleButton { review: view.review }
                }
            }
            PlainText {
                anchors.centerIn: parent
                visible: (!view.review.listed && view.review.failure === "") || view.review.stage === ReviewPresenter.Opening
                text: view.review.listed ? qsTr("Opening the run …") : qsTr("Looking for runs …")
                color: Tokens.quiet
            }
        }
        RowLayout {
            visible: view.review.undoText !== ""
            Layout.fillWidth: true
            spacing: Tokens.gap8
            NoticeLine {
                Layout.fillWidth: true
                text: view.review.undoText
            }
            QuietButton {
                text: qsTr("Take it back")
                keyName: "Z"
                onClicked: view.review.undo()
            }
        }
        RunListActions {
            id: actions
            Layout.fillWidth: true
            review: view.review
            isEmpty: view.isEmpty
            onTagged: list.forceActiveFocus()
        }
    }
}
