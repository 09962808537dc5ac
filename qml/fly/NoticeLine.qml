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
        anchors.verticalCenter: lineCount > 1 ? undefined : symbol.verticalCenter
        text: notice.text
        font.pixelSize: notice.size
    }
}
