import QtQuick
import QtQuick.Layouts
import Flowhand

/// What to fly today and why, and how much falls due in the week.
Card {
    id: card

    required property ProgressPresenter progress

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap12
        PlainText {
            text: qsTr("Today")
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: card.progress.later
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            spacing: Tokens.gap12
            keyNavigationEnabled: false
            boundsBehavior: Flickable.StopAtBounds
            model: card.progress.planned
            ThinScrollBar.vertical: ThinScrollBar {}
            Accessible.role: Accessible.List
            Accessible.name: qsTr("What to fly today")
            delegate: Item {
                id: line
                required property int rowId
                required property string title
                required property string reason
                width: list.width - 12
                height: words.height
                Accessible.role: Accessible.ListItem
                Accessible.name: qsTr("%1. %2").arg(title).arg(reason)
                Column {
                    id: words
                    width: line.width - fly.width - Tokens.gap8
                    spacing: 2
                    PlainText {
                        width: parent.width
                        text: line.title
                        font.weight: line.rowId === 0 ? Font.DemiBold : Font.Normal
                    }
                    PlainText {
                        width: parent.width
                        text: line.reason
                        color: Tokens.quiet
                        font.pixelSize: line.rowId === 0 ? Tokens.bodySize : Tokens.quietSize
                    }
                }
                ActionButton {
                    id: fly
                    anchors.right: parent.right
                    primary: line.rowId === 0
                    text: qsTr("Fly it")
                    keyName: line.rowId === 0 ? qsTr("Return") : ""
                    hint: line.title
                    onClicked: card.progress.flyPlanned(line.rowId)
                }
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Flows that fall due this week, each flown and passed on its day")
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        Row {
            id: week
            readonly property int barHeight: Tokens.isLow(card.Window.height) ? 24 : 48
            Layout.fillWidth: true
            Layout.preferredHeight: barHeight + 2 * Tokens.quietSize + 16
            Repeater {
                model: card.progress.ahead
                Item {
                    id: day
                    required property string day
                    required property int flows
                    required property real share
                    width: week.width / 7
                    height: week.height
                    Accessible.role: Accessible.StaticText
                    Accessible.name: qsTr("%1: %2").arg(day.day).arg(flows)
                    PlainText {
                        anchors { horizontalCenter: parent.horizontalCenter; bottom: bar.top; bottomMargin: 2 }
                        text: day.flows
                        font.pixelSize: Tokens.quietSize
                        Accessible.ignored: true
                    }
                    Rectangle {
                        id: bar
                        anchors { horizontalCenter: parent.horizontalCenter; bottom: name.top; bottomMargin: 2 }
                        width: parent.width * 0.5
                        height: Math.max(2, day.share * week.barHeight)
                        radius: 2
                        color: Tokens.line
                    }
                    PlainText {
                        id: name
                        anchors { horizontalCenter: parent.horizontalCenter; bottom: parent.bottom }
                        text: day.day
                        font.pixelSize: Tokens.quietSize
                        color: Tokens.quiet
                        Accessible.ignored: true
                    }
                }
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: card.progress.modelNote
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
    }
}
