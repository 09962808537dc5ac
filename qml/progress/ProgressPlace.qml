import QtQuick
import QtQuick.Layouts
import Flowhand

/// The Progress place: today's plan in sentences, how well each flow is known, and how the chosen one has gone.
FocusScope {
    id: place

    required property ProgressPresenter progress
    signal chooseAsked
    readonly property bool isEmpty: progress.listed && progress.lines === 0

    function pressKey(key: int): bool {
        switch (key) {
        case Qt.Key_Return:
        case Qt.Key_Enter:
            if (isEmpty)
                chooseAsked();
            else
                progress.flyPlanned(0);
            return true;
        case Qt.Key_Down:
            progress.choose(progress.chosen + 1);
            return true;
        case Qt.Key_Up:
            progress.choose(progress.chosen - 1);
            return true;
        case Qt.Key_F:
            progress.flyChosen();
            return true;
        case Qt.Key_P:
            progress.nextLine();
            return true;
        case Qt.Key_M:
            progress.toggleMixed();
            return true;
        default:
            return false;
        }
    }

    Component.onCompleted: progress.enter()

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                text: qsTr("Progress")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
                wrapMode: Text.NoWrap
            }
            PlainText {
                Layout.fillWidth: true
                text: place.progress.whose
                color: Tokens.quiet
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            QuietButton {
                enabled: place.progress.lines > 1
                opacity: enabled ? 1 : 0
                text: qsTr("Next pilot or rig")
                keyName: "P"
                onClicked: place.progress.nextLine()
            }
            QuietButton {
                enabled: place.progress.lines > 1
                opacity: enabled ? 1 : 0
                text: place.progress.mixed ? qsTr("Do not mix them") : qsTr("Mix pilots and rigs")
                keyName: "M"
                onClicked: place.progress.toggleMixed()
            }
        }
        NoticeLine {
            visible: text !== ""
            Layout.fillWidth: true
            verdict: Verdict.Wrong
            text: place.progress.failure !== "" ? place.progress.failure : place.progress.remarks
        }
        ProgressRibbon {
            Layout.fillWidth: true
            progress: place.progress
        }
        RowLayout {
            visible: !place.isEmpty
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap16
            PlanCard {
                Layout.fillHeight: true
                Layout.fillWidth: true
                Layout.preferredWidth: 2
                progress: place.progress
            }
            ColumnLayout {
                Layout.fillHeight: true
                Layout.fillWidth: true
                Layout.preferredWidth: 3
                spacing: Tokens.gap12
                FlownFlowList {
                    Layout.fillWidth: true
                    Layout.minimumHeight: Math.min(place.progress.flows.count, 3) * lineHeight + 2 * Tokens.gap8
                    Layout.maximumHeight: Layout.minimumHeight
                    focus: true
                    progress: place.progress
                }
                FlowTrendCard {
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    progress: place.progress
                }
            }
        }
        Item {
            visible: place.isEmpty
            Layout.fillWidth: true
            Layout.fillHeight: true
            ColumnLayout {
                anchors.centerIn: parent
                width: Math.min(parent.width, 640 * Tokens.textScale)
                spacing: Tokens.gap16
                PlainText {
                    Layout.fillWidth: true
                    horizontalAlignment: Text.AlignHCenter
                    text: qsTr("Nobody has flown yet. Fly a flow: from its run on, this place says how you get on and what to fly next. Demonstrations do not count.")
                    color: Tokens.quiet
                }
                ActionButton {
                    Layout.alignment: Qt.AlignHCenter
                    primary: true
                    text: qsTr("Choose a flow")
                    keyName: qsTr("Return")
                    onClicked: place.chooseAsked()
                }
            }
        }
    }
}
