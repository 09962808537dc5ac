import QtQuick
import Flowhand

/// One finding of the live check: where, what, and the rule's code.
ChoosableLine {
    id: finding

    required property int kindOf
    required property string kind
    required property string code
    required property string words
    property int where: 0

    implicitHeight: column.height + 10
    spoken: qsTr("Line %1, %2: %3").arg(where).arg(kind).arg(words)

    VerdictSymbol {
        id: symbol
        x: Tokens.gap4
        y: 6
        width: Tokens.bodySize + 1
        height: width
        verdict: finding.kindOf
        color: Tokens.verdictColor(finding.kindOf)
        ground: finding.ground
    }
    Column {
        id: column
        y: 5
        x: symbol.width + Tokens.gap12
        width: parent.width - x - Tokens.gap4
        PlainText {
            width: parent.width
            text: finding.words
            font.pixelSize: Tokens.quietSize
            Accessible.ignored: true
        }
        PlainText {
            width: parent.width
            text: finding.where > 0 ? qsTr("line %1 · %2 · %3").arg(finding.where).arg(finding.kind).arg(finding.code) : qsTr("%1 · %2").arg(finding.kind).arg(finding.code)
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            Accessible.ignored: true
        }
    }
}
