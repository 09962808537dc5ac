import QtQuick
import QtQuick.Layouts
import Flowhand

/// The Library place: what can be flown, the card of the chosen one, and its text.
FocusScope {
    id: place

    required property LibraryPresenter library
    readonly property list<string> kinds: [qsTr("Flows"), qsTr("Checklists"), qsTr("Scenarios"), qsTr("Aircraft")]

    function pressKey(key: int, modifiers: int): bool {
        return (loader.item as LibraryView)?.pressKey(key, modifiers) ?? false;
    }

    Component.onCompleted: library.enter()

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap12
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                text: place.library.editing ? place.library.title : qsTr("Library")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
                wrapMode: Text.NoWrap
            }
            Row {
                visible: !place.library.editing
                spacing: Tokens.gap4
                Repeater {
                    model: place.kinds
                    TabButton {
                        required property int index
                        required property string modelData
                        text: modelData
                        isHere: index === place.library.kind
                        onClicked: place.library.kind = index
                    }
                }
            }
            PlainText {
                Layout.fillWidth: true
                text: place.library.editing ? place.library.editor.file : ""
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                elide: Text.ElideMiddle
                wrapMode: Text.NoWrap
            }
            PlainText {
                visible: !place.library.editing
                text: qsTr("Search")
                color: Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            TextLine {
                id: search
                visible: !place.library.editing
                Layout.preferredWidth: 240 * Tokens.textScale
                label: qsTr("Search in titles, aircraft and file names")
                onTextChanged: place.library.search = text
                Keys.onEscapePressed: {
                    text = "";
                    loader.forceActiveFocus();
                }
            }
        }
        NoticeLine {
            visible: text !== ""
            Layout.fillWidth: true
            verdict: place.library.failed ? Verdict.Wrong : Verdict.Info
            text: place.library.message
        }
        Loader {
            id: loader
            Layout.fillWidth: true
            Layout.fillHeight: true
            focus: true
            sourceComponent: place.library.editing ? editor : list
        }
    }
    Component {
        id: list
        LibraryListView {
            library: place.library
            onSearchAsked: search.forceActiveFocus()
        }
    }
    Component {
        id: editor
        LibraryEditorView { library: place.library }
    }
}
