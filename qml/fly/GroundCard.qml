import QtQuick
import Flowhand

/// The ground from above, and in words how the aircraft lies to its line and what comes.
Card {
    id: card

    required property GroundPresenter ground
    required property RunPresenter run
    readonly property string words: run.aheadText === "" ? run.lineText : qsTr("%1, %2").arg(run.lineText).arg(run.aheadText)

    implicitWidth: 240 * Tokens.textScale
    implicitHeight: 220 * Tokens.textScale
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The ground from above: %1").arg(words)

    GroundDrawing {
        anchors { left: parent.left; right: parent.right; top: parent.top; bottom: caption.top; margins: Tokens.gap8 }
        ground: card.ground
    }
    PlainText {
        id: caption
        anchors { left: parent.left; right: parent.right; bottom: parent.bottom; leftMargin: Tokens.gap12; rightMargin: Tokens.gap12; bottomMargin: Tokens.gap8 }
        horizontalAlignment: Text.AlignHCenter
        text: card.words
        elide: Text.ElideRight
        maximumLineCount: 3
        Accessible.ignored: true
    }
}
