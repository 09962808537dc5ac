import QtQuick
import QtQuick.Layouts
import Flowhand

/// Before the start: each control that is not where the flow starts from, where it is and where it has to go.
StageView {
    id: view

    required property bool panelShown
    readonly property bool isReady: fly.run.setUp.count === 0
    readonly property bool isOnScreen: !fly.withRig
    readonly property string firstTitle: fly.start.stepTitle !== "" ? fly.start.stepTitle : fly.run.nextTitle

    function primaryAction(): bool {
        if (isReady)
            fly.begin();
        else if (isOnScreen)
            fly.setAll();
        return isReady || isOnScreen;
    }

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        Card {
            Layout.fillWidth: true
            Layout.fillHeight: true
            ColumnLayout {
                anchors.fill: parent
                anchors.margins: Tokens.gap24
                spacing: Tokens.gap12
                PlainText {
                    visible: view.fly.scenarioTitle !== ""
                    Layout.fillWidth: true
                    text: qsTr("Scenario: %1").arg(view.fly.scenarioTitle)
                    color: Tokens.quiet
                }
                PlainText {
                    Layout.fillWidth: true
                    text: view.fly.flowTitle
                    font.pixelSize: Tokens.titleSize
                    font.weight: Font.DemiBold
                }
                PlainText {
                    Layout.fillWidth: true
                    text: view.isReady ? view.isOnScreen ? qsTr("The controls on the screen are where the flow starts from. Move them by mouse, by the keys written above them, or with Tab and the arrow keys.") : qsTr("Every control is where the flow starts from.")
                        : view.isOnScreen ? qsTr("The flow begins as soon as these controls are where it starts from: move each, or all at once.")
                        : qsTr("The flow begins as soon as these controls are where it starts from.")
                }
                FactList {
                    visible: view.isReady && view.fly.scenarioTitle !== ""
                    Layout.fillWidth: true
                    facts: view.fly.briefing
                }
                NoticeLine {
                    visible: view.fly.start.picked && !view.fly.demonstration
                    Layout.fillWidth: true
                    text: qsTr("Begins at: %1.").arg(view.fly.start.words)
                }
                NoticeList {
                    Layout.fillWidth: true
                    notices: view.fly.run.notices
                }
                PlainText {
                    visible: view.isReady && view.firstTitle !== ""
                    Layout.topMargin: Tokens.gap16
                    text: qsTr("The first step will be")
                    color: Tokens.quiet
                }
                PlainText {
                    visible: view.isReady && view.firstTitle !== ""
                    Layout.fillWidth: true
                    text: view.firstTitle
                    font.pixelSize: Tokens.smallestDueSize(view.Window.height)
                    font.weight: Font.DemiBold
                    maximumLineCount: 3
                    elide: Text.ElideRight
                }
                Flickable {
                    id: flick
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    contentHeight: items.height
                    clip: true
                    ThinScrollBar.vertical: ThinScrollBar {}
                    Flow {
                        id: items
                        width: flick.width - 12
                        spacing: Tokens.gap12
                        Repeater {
                            model: view.fly.run.setUp
                            SetUpItem {}
                        }
                    }
                }
                RowLayout {
                    spacing: Tokens.gap12
                    ActionButton {
                        visible: view.isReady
                        text: qsTr("Start")
                        primary: true
                        keyName: qsTr("Return")
                        onClicked: view.fly.begin()
                    }
                    ActionButton {
                        visible: !view.isReady && view.isOnScreen
                        text: qsTr("Put them all there")
                        primary: true
                        keyName: qsTr("Return")
                        onClicked: view.fly.setAll()
                    }
                    ActionButton {
                        visible: !view.isReady
                        text: qsTr("Start as it is")
                        hint: qsTr("The debrief will say that the set-up was not right.")
                        onClicked: view.fly.waive()
                    }
                    ActionButton {
                        text: qsTr("Back")
                        keyName: qsTr("Esc")
                        onClicked: view.fly.leave()
                    }
                }
            }
        }
        ControlPanel {
            visible: view.panelShown
            Layout.fillWidth: true
            panel: view.fly.panel
        }
    }
}
