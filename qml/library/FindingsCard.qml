import QtQuick
import QtQuick.Layouts
import Flowhand

/// What the live check says of the text: errors at their line, then advice with its rule and its source.
Card {
    id: card

    required property FileEditor editor
    property int at: -1
    signal placeAsked(line: int, column: int)

    /// To the next finding's place; after the last to the first.
    function next(): void {
        at = list.count > 0 ? (at + 1) % list.count : -1;
        list.positionViewAtIndex(Math.max(at, 0), ListView.Contain);
        (list.itemAtIndex(at) as FindingInText)?.picked();
    }

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap12
        spacing: Tokens.gap8
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap8
            NoticeLine {
                Layout.fillWidth: true
                verdict: card.editor.verdictKind
                text: card.editor.verdict
            }
            QuietButton {
                enabled: list.count > 0
                opacity: enabled ? 1 : 0
                text: qsTr("Next")
                keyName: "F4"
                onClicked: card.next()
            }
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            spacing: 2
            keyNavigationEnabled: false
            boundsBehavior: Flickable.StopAtBounds
            model: card.editor.findings
            ThinScrollBar.vertical: ThinScrollBar {}
            Accessible.role: Accessible.List
            Accessible.name: qsTr("What the check says of the text")
            delegate: FindingInText {
                id: finding
                required property int rowId
                required property int line
                required property int column
                width: list.width - 12
                where: line
                chosen: rowId === card.at
                onPicked: {
                    card.at = rowId;
                    card.placeAsked(line, column);
                }
            }
        }
    }
}
