import QtQuick
import QtQuick.Layouts
import Flowhand

/// The files of one kind, and the card of the chosen one.
LibraryView {
    id: view

    signal searchAsked

    function pressKey(key: int, modifiers: int): bool {
        switch (key) {
        case Qt.Key_Down:
            library.choose(library.chosen + 1);
            return true;
        case Qt.Key_Up:
            library.choose(library.chosen - 1);
            return true;
        case Qt.Key_Left:
            library.kind = library.kind - 1;
            return true;
        case Qt.Key_Right:
            library.kind = library.kind + 1;
            return true;
        case Qt.Key_PageDown:
            card.scroll(1);
            return true;
        case Qt.Key_PageUp:
            card.scroll(-1);
            return true;
        case Qt.Key_Return:
        case Qt.Key_Enter:
            if (library.own)
                library.edit();
            else
                library.copyToOwn();
            return true;
        case Qt.Key_T:
            library.edit();
            return true;
        case Qt.Key_P:
            library.print();
            return true;
        case Qt.Key_F:
            searchAsked();
            return true;
        default:
            return false;
        }
    }

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        PhaseRibbon {
            visible: view.library.kind < LibraryPresenter.Scenarios
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap8
            Layout.rightMargin: Tokens.gap8
            phases: view.library.phases
            flows: view.library.rows
            chosen: view.library.chosen
            choosable: true
            onBeadChosen: row => view.library.choose(row)
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap16
            Card {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 2
                ListView {
                    id: list
                    anchors.fill: parent
                    anchors.margins: Tokens.gap8
                    clip: true
                    focus: true
                    keyNavigationEnabled: false
                    currentIndex: view.library.chosen
                    highlightMoveDuration: 0
                    model: view.library.rows
                    ThinScrollBar.vertical: ThinScrollBar {}
                    Accessible.role: Accessible.List
                    Accessible.name: qsTr("The files of this kind")
                    delegate: LibraryLine {
                        required property int rowId
                        width: list.width - 12
                        chosen: rowId === view.library.chosen
                        onPicked: view.library.choose(rowId)
                    }
                }
                PlainText {
                    anchors.centerIn: parent
                    width: parent.width - 2 * Tokens.gap24
                    horizontalAlignment: Text.AlignHCenter
                    visible: list.count === 0
                    text: qsTr("Nothing here has these words.")
                    color: Tokens.quiet
                }
            }
            ColumnLayout {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 3
                spacing: Tokens.gap12
                CardView {
                    id: card
                    Layout.fillWidth: true
                    Layout.fillHeight: true
                    library: view.library
                }
                Flow {
                    Layout.fillWidth: true
                    spacing: Tokens.gap8
                    ActionButton {
                        primary: true
                        enabled: view.library.editor.open
                        text: view.library.own ? qsTr("Change it") : qsTr("Make my own copy")
                        hint: view.library.own ? "" : qsTr("What is shipped stays as it is; the copy is yours to change")
                        keyName: qsTr("Return")
                        onClicked: view.pressKey(Qt.Key_Return, 0)
                    }
                    ActionButton {
                        enabled: view.library.editor.open
                        text: qsTr("Its text")
                        keyName: "T"
                        onClicked: view.library.edit()
                    }
                    ActionButton {
                        enabled: view.library.card !== ""
                        text: qsTr("Print to PDF")
                        keyName: "P"
                        onClicked: view.library.print()
                    }
                }
            }
        }
    }
}
