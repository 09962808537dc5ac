import QtQuick
import Flowhand

/// The last step's verdict: symbol, word and the step, in a place of its own that stays free between verdicts.
Item {
    id: line

    required property int verdict
    required property string word
    required property string title

    implicitHeight: 36 * Tokens.textScale
    Accessible.role: Accessible.AlertMessage
    Accessible.name: word !== "" ? qsTr("%1: %2").arg(title).arg(word) : qsTr("No verdict now")

    Row {
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.gap12
        opacity: line.word !== "" ? 1 : 0
        Behavior on opacity {
            NumberAnimation { duration: Tokens.quickTime }
        }
        VerdictSymbol {
            width: 32
            height: 32
            anchors.verticalCenter: parent.verticalCenter
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: Tokens.raised
        }
        PlainText {
            anchors.verticalCenter: parent.verticalCenter
            text: line.word
            font.pixelSize: Tokens.titleSize
            font.weight: Font.DemiBold
            color: Tokens.verdictColor(line.verdict)
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
        PlainText {
            anchors.verticalCenter: parent.verticalCenter
            text: line.title
            width: Math.min(implicitWidth, line.width - x)
            font.pixelSize: Tokens.strongSize
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
}
