import QtQuick
import Flowhand

/// The card of the chosen file, as it is printed.
Card {
    id: view

    required property LibraryPresenter library

    function scroll(pages: int): void {
        flick.contentY = Math.max(0, Math.min(flick.contentHeight - flick.height, flick.contentY + pages * flick.height * 0.9));
    }

    Connections {
        target: view.library
        function onChosenChanged(): void {
            flick.contentY = 0;
        }
    }
    Flickable {
        id: flick
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        contentHeight: column.height
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        ThinScrollBar.vertical: ThinScrollBar {}
        Column {
            id: column
            width: flick.width - 12
            spacing: Tokens.gap16
            Text {
                width: parent.width
                text: view.library.card
                textFormat: Text.RichText
                wrapMode: Text.Wrap
                font.family: Tokens.family
                font.pixelSize: Tokens.bodySize
                color: Tokens.text
                linkColor: Tokens.info
                Accessible.role: Accessible.StaticText
                Accessible.name: view.library.title
            }
            PanelPicture {
                visible: view.library.panel !== ""
                width: Math.min(parent.width, 760 * Tokens.textScale)
                height: width * ratio
                svg: view.library.panel
                paper: Tokens.raised
                block: Tokens.sunken
                ink: Tokens.text
                line: Tokens.line
                family: Tokens.family
                Accessible.role: Accessible.Graphic
                Accessible.name: qsTr("The cockpit's areas, with the numbers of the steps at their controls")
            }
        }
    }
    PlainText {
        anchors.centerIn: parent
        width: parent.width - 2 * Tokens.gap24
        horizontalAlignment: Text.AlignHCenter
        visible: view.library.card === "" && view.library.editor.open
        text: view.library.editor.failure !== "" ? view.library.editor.failure : qsTr("There is no card while the text has an error.")
        color: Tokens.quiet
    }
}
