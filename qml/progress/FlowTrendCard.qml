import QtQuick
import QtQuick.Layouts
import Flowhand

/// How the chosen flow has gone: score and pace from run to run, and what goes wrong.
Card {
    id: card

    required property ProgressPresenter progress
    readonly property real plotHeight: Math.max(72, Math.min(180, height * 0.26))

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap8
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                Layout.fillWidth: true
                text: card.progress.title
                font.pixelSize: Tokens.strongSize
                font.weight: Font.DemiBold
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            QuietButton {
                text: qsTr("Fly it")
                keyName: "F"
                Accessible.description: card.progress.title
                onClicked: card.progress.flyChosen()
            }
        }
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap24
            TrendColumn {
                head: qsTr("Score, points of 100")
                trend: card.progress.scoreTrend
                highest: 100
                plotHeight: card.plotHeight
                TrendPlot {
                    anchors.fill: parent
                    points: card.progress.scorePoints
                    passed: card.progress.passedRuns
                    runs: card.progress.runs
                    highest: 100
                    ink: Tokens.text
                    axis: Tokens.line
                    ground: Tokens.raised
                }
            }
            TrendColumn {
                head: qsTr("Pace of whole runs, s")
                trend: card.progress.paceTrend
                highest: pace.highest
                plotHeight: card.plotHeight
                TrendPlot {
                    id: pace
                    anchors.fill: parent
                    points: card.progress.pacePoints
                    curve: card.progress.curvePoints
                    passed: card.progress.passedRuns
                    runs: card.progress.runs
                    highest: Math.max(topOf(card.progress.pacePoints), topOf(card.progress.curvePoints))
                    ink: Tokens.text
                    axis: Tokens.line
                    ground: Tokens.raised
                }
            }
        }
        PlainText {
            Layout.fillWidth: true
            text: card.progress.curve !== "" ? qsTr("Filled: passed. Dashed: %1.").arg(card.progress.curve) : qsTr("Filled: passed. A trend is told from 4 runs, a learning curve from 6 whole ones.")
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        PlainText {
            Layout.fillWidth: true
            text: card.progress.steps.count > 0 ? card.progress.rateRuns === 1 ? qsTr("Went wrong in the one run") : qsTr("Goes wrong, of the last %1 runs").arg(card.progress.rateRuns)
                : card.progress.rateRuns === 1 ? qsTr("No step went wrong in the one run.") : qsTr("No step went wrong in the last %1 runs.").arg(card.progress.rateRuns)
            font.weight: Font.DemiBold
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            spacing: Tokens.gap8
            keyNavigationEnabled: false
            boundsBehavior: Flickable.StopAtBounds
            model: card.progress.steps
            ThinScrollBar.vertical: ThinScrollBar {}
            Accessible.role: Accessible.List
            Accessible.name: qsTr("The steps that go wrong, and what was done instead")
            delegate: StepRateLine { width: list.width - 12 }
        }
    }
}
