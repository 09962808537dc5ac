import QtQuick
import QtQuick.Layouts
import Flowhand

/// The chosen control: the quantity that is judged, large and over the last seconds; or what to do now.
Card {
    id: card

    required property BenchPresenter bench
    required property bool busy
    /// What stands in place of the plot while the builder is asked about a task.
    enum Panel { Plot, Ways, Values, Tolerances }
    property int panel: MeasureCard.Plot
    readonly property bool isPlotShown: busy || panel === MeasureCard.Plot
    /// More letters than this are read as well in a smaller size, and leave room for the plot.
    readonly property int longAsk: 120

    /// False when the key means nothing in the panel that is shown.
    function pressKey(key: int): bool {
        if (isPlotShown)
            return false;
        if (key === Qt.Key_Escape)
            close();
        else if (key === Qt.Key_Return || key === Qt.Key_Enter)
            begin();
        else if (panel === MeasureCard.Ways)
            ways.pressKey(key);
        return true;
    }

    function begin() {
        if (panel === MeasureCard.Ways)
            bench.beginWiring();
        else if (panel === MeasureCard.Values)
            bench.calibrateTo(values.values);
        else
            bench.setTolerances(tolerances.words);
        close();
    }

    function close() {
        panel = MeasureCard.Plot;
        closed();
    }

    signal closed

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap8
        RowLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap12
            PlainText {
                Layout.fillWidth: true
                text: card.busy ? card.bench.taskTitle : card.bench.chosenLabel
                font.pixelSize: Tokens.strongSize
                font.weight: Font.DemiBold
                elide: Text.ElideRight
                wrapMode: Text.NoWrap
            }
            PlainText {
                text: card.busy ? card.bench.stageWords : ""
                color: Tokens.quiet
                wrapMode: Text.NoWrap
            }
        }
        PlainText {
            visible: card.busy
            Layout.fillWidth: true
            text: card.bench.ask
            font.pixelSize: text.length <= card.longAsk ? Tokens.titleSize : Tokens.textScale > 1 ? Tokens.bodySize : Tokens.strongSize
            font.weight: Font.DemiBold
            color: Tokens.accent
            maximumLineCount: 9
            elide: Text.ElideRight
        }
        PlainText {
            visible: !card.busy && card.bench.wired && card.isPlotShown
            Layout.fillWidth: true
            text: card.bench.valueText
            font.pixelSize: Tokens.titleSize * 1.5
            font.weight: Font.DemiBold
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            visible: !card.busy && !card.bench.wired && card.isPlotShown
            Layout.fillWidth: true
            text: qsTr("No input of the rig makes this control yet. Wire it: move the control when asked, and the input that moves is found.")
            color: Tokens.quiet
        }
        NoticeLine {
            visible: card.bench.taskOver && card.bench.outcome !== "" && card.isPlotShown
            Layout.fillWidth: true
            verdict: card.bench.taskGood ? Verdict.Done : Verdict.Wrong
            text: card.bench.outcome
        }
        WiringPanel {
            id: ways
            visible: !card.busy && card.panel === MeasureCard.Ways
            Layout.fillWidth: true
            Layout.fillHeight: true
            bench: card.bench
            onBegun: card.begin()
            onClosed: card.close()
        }
        ValuesPanel {
            id: values
            visible: !card.busy && card.panel === MeasureCard.Values
            Layout.fillWidth: true
            Layout.fillHeight: true
            bench: card.bench
            onBegun: card.begin()
            onClosed: card.close()
        }
        TolerancesPanel {
            id: tolerances
            visible: !card.busy && card.panel === MeasureCard.Tolerances
            Layout.fillWidth: true
            Layout.fillHeight: true
            bench: card.bench
            onBegun: card.begin()
            onClosed: card.close()
        }
        Rectangle {
            visible: card.bench.wired && card.isPlotShown
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.minimumHeight: 40
            radius: Tokens.corner
            color: Tokens.sunken
            TracePlot {
                anchors.fill: parent
                anchors.margins: Tokens.gap8
                trace: card.bench.trace
                ink: Tokens.text
                axis: Tokens.line
                band: Tokens.accent
                font.family: Tokens.family
                font.pixelSize: Tokens.quietSize
                Accessible.role: Accessible.Graphic
                Accessible.name: qsTr("The last ten seconds of %1, with its gates and the bands of the steps that judge it").arg(card.bench.chosenLabel)
            }
        }
        Item {
            visible: !card.bench.wired && card.isPlotShown
            Layout.fillHeight: true
        }
    }
}
