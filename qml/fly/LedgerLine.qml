import QtQuick
import Flowhand

/// One loss: its points, its symbol and word, and the whole sentence.
Item {
    id: line

    required property string points
    required property string what
    required property string sentence
    required property int verdict

    implicitHeight: Math.max(symbol.height, words.implicitHeight)
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1 points: %2").arg(points).arg(sentence)

    PlainText {
        id: number
        width: 64 * Tokens.textScale
        horizontalAlignment: Text.AlignRight
        text: line.points
        font.weight: Font.DemiBold
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    VerdictSymbol {
        id: symbol
        anchors.left: number.right
        anchors.leftMargin: Tokens.gap12
        y: 2
        width: Tokens.bodySize + 3
        height: width
        verdict: line.verdict
        color: Tokens.verdictColor(line.verdict)
        ground: Tokens.raised
    }
    PlainText {
        id: words
        anchors.left: symbol.right
        anchors.leftMargin: Tokens.gap12
        anchors.right: parent.right
        text: line.sentence
        Accessible.ignored: true
    }
}
