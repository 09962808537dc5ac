import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Flowhand

/// The flows of a flight that is over, and which of them is shown.
ColumnLayout {
    id: flight

    required property RowModel parts
    signal picked(row: int)

    component PartLine: RowLayout {
        id: line
        required property string title
        required property string score
        required property int verdict
        required property bool strong
        spacing: Tokens.gap8
        VerdictSymbol {
            Layout.leftMargin: Tokens.gap12
            Layout.preferredWidth: Tokens.bodySize + 3
            Layout.preferredHeight: Tokens.bodySize + 3
            verdict: line.verdict
            color: Tokens.verdictColor(line.verdict)
            ground: Tokens.raised
        }
        PlainText {
            Layout.fillWidth: true
            text: line.title
            font.weight: line.strong ? Font.DemiBold : Font.Normal
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
        PlainText {
            Layout.rightMargin: Tokens.gap12
            text: line.score
            font.weight: Font.DemiBold
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }

    spacing: Tokens.gap4

    Repeater {
        model: flight.parts
        T.Button {
            id: part
            required property int rowId
            required property string title
            required property string score
            required property int verdict
            required property bool chosen

            Layout.fillWidth: true
            implicitHeight: implicitContentHeight + Tokens.gap12
            focusPolicy: Qt.TabFocus
            Accessible.role: Accessible.PageTab
            Accessible.name: score === "" ? title : qsTr("%1: %2 points").arg(title).arg(score)
            Accessible.selected: chosen
            onClicked: flight.picked(rowId)
            Keys.onReturnPressed: clicked()
            Keys.onEnterPressed: clicked()

            background: Rectangle {
                radius: Tokens.corner
                color: part.chosen || part.hovered ? Tokens.sunken : "transparent"
                border.width: part.chosen ? 1 : 0
                border.color: Tokens.accent
                FocusFrame { shown: part.visualFocus }
            }
            contentItem: PartLine {
                title: part.title
                score: part.score
                verdict: part.verdict
                strong: part.chosen
            }
        }
    }
}
