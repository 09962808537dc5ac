import QtQuick
import Flowhand

/// A step in a list, with its symbol; and with its verdict in words when it is over.
Item {
    id: line

    required property string title
    required property string who
    required property bool own
    required property int verdict
    required property string word
    required property string detail
    property bool withVerdict: false

    implicitHeight: column.implicitHeight
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1, %2").arg(title).arg(word)

    VerdictSymbol {
        id: symbol
        y: 2
        width: Tokens.bodySize + 3
        height: width
        verdict: line.verdict
        color: Tokens.verdictColor(line.verdict)
        ground: Tokens.raised
    }
    Column {
        id: column
        anchors.left: symbol.right
        anchors.leftMargin: Tokens.gap8
        anchors.right: parent.right
        PlainText {
            width: parent.width
            text: line.own ? line.title : qsTr("%1 (%2)").arg(line.title).arg(line.who)
            color: line.own ? Tokens.text : Tokens.quiet
            Accessible.ignored: true
        }
        PlainText {
            width: parent.width
            visible: line.withVerdict
            text: line.detail !== "" ? line.detail : line.word
            font.pixelSize: Tokens.quietSize
            color: Tokens.verdictColor(line.verdict)
            Accessible.ignored: true
        }
    }
}
