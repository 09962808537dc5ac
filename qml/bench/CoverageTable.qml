import QtQuick
import QtQuick.Layouts
import Flowhand

/// Steps against the controls that they need: what this rig can confirm, and what it was seen to.
Card {
    id: card

    required property BenchPresenter bench

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        anchors.bottomMargin: Tokens.gap12
        spacing: Tokens.gap8
        GridLayout {
            Layout.fillWidth: true
            // The words above the buttons, where they would not have room beside them.
            columns: buttons.implicitWidth + 320 * Tokens.textScale > width ? 1 : 2
            columnSpacing: Tokens.gap8
            rowSpacing: 0
            PlainText {
                Layout.fillWidth: true
                Layout.minimumHeight: implicitHeight
                text: card.bench.coverageWords
            }
            RowLayout {
                id: buttons
                spacing: Tokens.gap8
                QuietButton {
                    text: qsTr("Shown: %1").arg(card.bench.flowFilter < 0 ? qsTr("every flow") : card.bench.flowTitles[card.bench.flowFilter])
                    Accessible.description: qsTr("Shows the steps of the next flow alone")
                    keyName: "F"
                    onClicked: card.bench.turnFlowFilter()
                }
                QuietButton {
                    // Shown always: Qt 6.4 gives what is shown later no place in the row.
                    enabled: card.bench.seatsChoosable
                    text: !card.bench.seatsChoosable ? qsTr("One seat") : card.bench.bothSeats ? qsTr("Both seats") : qsTr("First seat")
                    Accessible.description: qsTr("Shows the steps of both seats, or of the first alone")
                    keyName: "B"
                    onClicked: card.bench.bothSeats = !card.bench.bothSeats
                }
                QuietButton {
                    text: qsTr("Save as CSV")
                    keyName: "X"
                    onClicked: card.bench.writeCoverage()
                }
                QuietButton {
                    text: qsTr("Save check sheet")
                    keyName: "S"
                    onClicked: card.bench.writeSheet()
                }
                QuietButton {
                    enabled: card.bench.sheetWritten
                    text: qsTr("Open it")
                    keyName: "P"
                    Accessible.description: qsTr("The check sheet that was saved")
                    onClicked: card.bench.showSheet()
                }
            }
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: card.bench.written !== "" ? card.bench.written : card.bench.orphanWords
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            elide: Text.ElideMiddle
            wrapMode: Text.NoWrap
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            model: card.bench.coverage
            ThinScrollBar.vertical: ThinScrollBar {}
            delegate: CoverageLine {
                width: list.width - 12
                flowShown: card.bench.flowFilter < 0
            }
        }
    }
}
