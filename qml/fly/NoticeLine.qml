import QtQuick
import Flowhand

/// A sentence with the symbol of what kind it is.
Item {
    id: notice

    required property string text
    property int verdict: Verdict.Info
    property int size: Tokens.bodySize

    implicitHeight: Math.max(symbol.height, words.implicitHeight)

    VerdictSymbol {
        id: symbol
        width: notice.size + 3
        height: width
        verdict: notice.verdict
        color: Tokens.verdictColor(notice.verdict)
        ground: Tokens.ground
    }
    PlainText {
        id: words
        anchors.left: symbol.right
        anchors.leftMargin: Tokens.gap8
        anchors.right: parent.right
        // One line stands beside the middle of the symbol, several begin at the top. An anchor that is taken away would leave
        // them where it had them.
        y: lineCount > 1 ? 0 : (symbol.height - height) / 2
        text: notice.text
        font.pixelSize: notice.size
    }
}
