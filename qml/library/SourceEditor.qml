import QtQuick
import Flowhand

/// A plain text file with its line numbers, and a symbol at each line of which something is to be said.
FocusScope {
    id: source

    required property FileEditor editor
    /// A key that means nothing to the text.
    signal keyLeft(key: int, modifiers: int)

    function goTo(line: int, column: int): void {
        area.cursorPosition = editor.positionOf(line, column);
        area.forceActiveFocus();
    }

    /// To the file's first line.
    function begin(): void {
        area.cursorPosition = 0;
        flick.contentY = 0;
        area.forceActiveFocus();
    }

    /// Behind the step that the cursor is in, before the first where it is in none: there it cannot tear one apart.
    function insert(words: string): void {
        if (words === "" || area.readOnly)
            return;
        const next = area.text.indexOf("\n[", Math.max(area.cursorPosition, area.text.indexOf("\n[[step]]")));
        const at = next < 0 ? area.length : next + 1;
        area.insert(at, next < 0 ? "\n" + words : words + "\n");
        area.cursorPosition = at + words.length;
        area.forceActiveFocus();
    }

    function show(): void {
        const at = area.cursorPosition;
        area.text = editor.text;
        area.cursorPosition = Math.min(at, area.length);
    }

    Component.onCompleted: {
        show();
        begin();
    }
    Connections {
        target: source.editor
        function onOpened(): void {
            area.cursorPosition = 0;
            flick.contentY = 0;
        }
        function onReloaded(): void {
            source.show();
        }
    }

    Rectangle {
        anchors.fill: parent
        radius: Tokens.cardCorner
        color: Tokens.sunken
        border.width: area.activeFocus ? 2 : 1
        border.color: area.activeFocus ? Tokens.accent : Tokens.line
    }
    Flickable {
        id: flick
        readonly property real lineHeight: area.lineCount > 0 ? area.contentHeight / area.lineCount : 0
        anchors.fill: parent
        anchors.margins: Tokens.gap8
        contentWidth: margin.width + area.width
        contentHeight: Math.max(area.contentHeight, height)
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        ThinScrollBar.vertical: ThinScrollBar {}
        ThinScrollBar.horizontal: ThinScrollBar {}

        function reveal(place: rect): void {
            contentY = Math.max(0, Math.min(place.y, Math.max(contentY, place.y + place.height - height)));
            contentX = Math.max(0, Math.min(place.x, Math.max(contentX, place.x + margin.width + 24 - width)));
        }

        Item {
            id: margin
            width: numbers.implicitWidth + Tokens.bodySize + Tokens.gap16
            height: area.contentHeight
            Text {
                id: numbers
                anchors { right: parent.right; rightMargin: Tokens.gap12 }
                text: source.editor.lineNumbers(area.lineCount)
                font: area.font
                color: Tokens.quiet
                horizontalAlignment: Text.AlignRight
                Accessible.ignored: true
            }
            Repeater {
                model: source.editor.findings
                VerdictSymbol {
                    required property int line
                    required property int kindOf
                    x: 0
                    y: (Math.max(line, 1) - 1) * flick.lineHeight + (flick.lineHeight - height) / 2
                    width: Tokens.quietSize + 1
                    height: width
                    verdict: kindOf
                    color: Tokens.verdictColor(kindOf)
                    ground: Tokens.sunken
                }
            }
        }
        TextEdit {
            id: area
            x: margin.width
            width: Math.max(implicitWidth + 24, flick.width - margin.width)
            height: Math.max(contentHeight, flick.height)
            focus: true
            activeFocusOnTab: true
            readOnly: source.editor.readOnly
            textFormat: TextEdit.PlainText
            wrapMode: TextEdit.NoWrap
            font.family: "monospace"
            font.pixelSize: Tokens.quietSize + 1
            color: Tokens.text
            selectionColor: Tokens.accent
            selectedTextColor: Tokens.accentText
            selectByMouse: true
            tabStopDistance: 4 * font.pixelSize
            Accessible.role: Accessible.EditableText
            Accessible.name: qsTr("The text of %1").arg(source.editor.file)
            onTextChanged: source.editor.edit(text)
            onCursorRectangleChanged: flick.reveal(cursorRectangle)
            Keys.onPressed: event => {
                const isSave = event.key === Qt.Key_S && (event.modifiers & Qt.ControlModifier);
                event.accepted = isSave || event.key === Qt.Key_Escape || (event.key >= Qt.Key_F4 && event.key <= Qt.Key_F8);
                if (event.accepted)
                    source.keyLeft(event.key, event.modifiers);
            }
        }
    }
}
