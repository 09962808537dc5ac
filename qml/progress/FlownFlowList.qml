import QtQuick
import QtQuick.Layouts
import Flowhand

/// The flows that were flown, in the order of the flight, with how well each is known.
Card {
    id: card

    required property ProgressPresenter progress

    readonly property real lineHeight: Math.round(Tokens.quietSize * 2.6) + 6 // two lines of the small words

    implicitHeight: list.count * lineHeight + 2 * Tokens.gap8

    ListView {
        id: list
        anchors.fill: parent
        anchors.margins: Tokens.gap8
        clip: true
        focus: true
        keyNavigationEnabled: false
        boundsBehavior: Flickable.StopAtBounds
        currentIndex: card.progress.chosen
        highlightMoveDuration: 0
        model: card.progress.flows
        ThinScrollBar.vertical: ThinScrollBar {}
        Accessible.role: Accessible.List
        Accessible.name: qsTr("The flows that were flown")
        delegate: ChoosableLine {
            id: line
            required property int rowId
            required property string title
            required property string last
            required property string known
            required property real strength
            width: list.width - 12
            implicitHeight: card.lineHeight
            spoken: qsTr("%1, %2. %3").arg(title).arg(known).arg(last)
            chosen: rowId === card.progress.chosen
            onPicked: card.progress.choose(rowId)
            RowLayout {
                id: row
                anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap8; rightMargin: Tokens.gap8 }
                spacing: Tokens.gap12
                PlainText {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 3
                    text: line.title
                    font.weight: line.chosen ? Font.DemiBold : Font.Normal
                    elide: Text.ElideRight
                    wrapMode: Text.NoWrap
                    Accessible.ignored: true
                }
                PlainText {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 4
                    text: line.last
                    font.pixelSize: Tokens.quietSize
                    color: Tokens.quiet
                    elide: Text.ElideRight
                    wrapMode: Text.Wrap
                    maximumLineCount: 2
                    Accessible.ignored: true
                }
                Rectangle {
                    Layout.preferredWidth: 64
                    Layout.preferredHeight: 8
                    radius: 4
                    color: line.chosen ? Tokens.ground : Tokens.sunken
                    border.width: 1
                    border.color: Tokens.line
                    Rectangle {
                        width: parent.width * line.strength
                        height: parent.height
                        radius: 4
                        color: Tokens.text
                    }
                }
                PlainText {
                    Layout.preferredWidth: 140 * Tokens.textScale
                    text: line.known
                    font.pixelSize: Tokens.quietSize
                    wrapMode: Text.NoWrap
                    Accessible.ignored: true
                }
            }
        }
    }
}
