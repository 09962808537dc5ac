import QtQuick
import Flowhand

/// A sentence of the run as a whole; one with a time leads to it.
ChoosableLine {
    id: line

    required property string sentence
    required property string detail
    required property int verdict
    required property double time

    choosable: time >= 0
    spoken: sentence
    implicitHeight: column.implicitHeight + 4

    VerdictSymbol {
        y: 4
        width: Tokens.bodySize + 1
        height: width
        verdict: line.verdict
        color: Tokens.verdictColor(line.verdict)
        ground: line.ground
    }
    Column {
        id: column
        x: Tokens.bodySize + 9
        y: 2
        width: parent.width - x
        PlainText {
            width: parent.width
            text: line.sentence
        }
        PlainText {
            visible: text !== ""
            width: parent.width
            text: line.detail
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
    }
}
