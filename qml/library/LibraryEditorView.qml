import QtQuick
import QtQuick.Layouts
import Flowhand

/// The text of the chosen file with its live check beside it, and the card that comes of it.
LibraryView {
    id: view

    readonly property FileEditor editor: library.editor

    function pressKey(key: int, modifiers: int): bool {
        if (key === Qt.Key_S && (modifiers & Qt.ControlModifier)) {
            editor.save();
            return true;
        }
        switch (key) {
        case Qt.Key_Escape:
            library.leaveEditor();
            return true;
        case Qt.Key_F4:
            findings.next();
            return true;
        case Qt.Key_F5:
            editor.revert();
            return true;
        case Qt.Key_F6:
            if (editor.changedOutside)
                editor.keepMine();
            return true;
        case Qt.Key_F7:
            library.toggleActing();
            return true;
        case Qt.Key_F8:
            source.insert(library.acted.stepFor(editor.text));
            return true;
        default:
            return false;
        }
    }

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap8
        NoticeLine {
            visible: text !== ""
            Layout.fillWidth: true
            verdict: view.editor.failure !== "" ? Verdict.Wrong : Verdict.Late
            text: view.editor.failure !== "" ? view.editor.failure
                : view.editor.changedOutside ? qsTr("This file was changed outside while you changed it here. Both are still there: take the file as it is, or keep yours.")
                : view.editor.notice
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap16
            SourceEditor {
                id: source
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 3
                focus: true
                editor: view.editor
                onKeyLeft: (key, modifiers) => view.pressKey(key, modifiers)
            }
            ColumnLayout {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 2
                spacing: Tokens.gap12
                FindingsCard {
                    id: findings
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    editor: view.editor
                    onPlaceAsked: (line, column) => source.goTo(line, column)
                }
                CardView {
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    library: view.library
                }
            }
        }
        Loader {
            active: view.library.acted.open
            visible: active
            Layout.fillWidth: true
            sourceComponent: ControlPanel { panel: view.library.acted.panel }
        }
        NoticeLine {
            visible: view.library.acted.open || view.library.acted.failure !== ""
            Layout.fillWidth: true
            verdict: view.library.acted.failure !== "" ? Verdict.Wrong : Verdict.Due
            text: view.library.acted.failure !== "" ? view.library.acted.failure
                : view.library.acted.title !== "" ? qsTr("The step is: %1. F8 writes it behind the step that the cursor is in.").arg(view.library.acted.title)
                : view.library.acted.rigTitle !== "" ? qsTr("Move a control, here or on %1: the step is written for where it then stands.").arg(view.library.acted.rigTitle)
                : qsTr("Move a control: the step is written for where it then stands.")
        }
        NoticeLine {
            visible: text !== ""
            Layout.fillWidth: true
            verdict: Verdict.Info
            text: view.library.acted.rigFailure
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            ActionButton {
                visible: !view.editor.readOnly
                primary: true
                enabled: view.editor.unsaved && !view.editor.changedOutside
                text: qsTr("Save")
                keyName: qsTr("Ctrl S")
                onClicked: view.editor.save()
            }
            ActionButton {
                visible: view.editor.readOnly
                primary: true
                text: qsTr("Make my own copy")
                onClicked: view.library.copyToOwn()
            }
            ActionButton {
                visible: !view.editor.readOnly
                enabled: view.editor.unsaved
                text: qsTr("Take the file as it is")
                hint: qsTr("Your unsaved changes are gone then")
                keyName: "F5"
                onClicked: view.editor.revert()
            }
            ActionButton {
                visible: view.editor.changedOutside
                text: qsTr("Keep mine")
                hint: qsTr("Saving then replaces what was changed outside")
                keyName: "F6"
                onClicked: view.editor.keepMine()
            }
            ActionButton {
                visible: !view.editor.readOnly && view.library.kind < LibraryPresenter.Scenarios
                text: view.library.acted.open ? qsTr("Put the controls away") : qsTr("Act a step out")
                hint: qsTr("What you move, here or on your rig, writes the step")
                keyName: "F7"
                onClicked: view.library.toggleActing()
            }
            ActionButton {
                visible: view.library.acted.open
                enabled: view.library.acted.title !== ""
                text: qsTr("Write the step")
                keyName: "F8"
                onClicked: view.pressKey(Qt.Key_F8, 0)
            }
            ActionButton {
                text: qsTr("Back to the list")
                keyName: qsTr("Esc")
                onClicked: view.library.leaveEditor()
            }
        }
    }
}
