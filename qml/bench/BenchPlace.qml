import QtQuick
import QtQuick.Layouts
import Flowhand

/// The Bench place: the controls that stir when touched, the measured quantity of the chosen one, what is wrong with it
/// and what to do, and below the steps that it proves.
FocusScope {
    id: place

    required property BenchPresenter bench
    readonly property bool isBusy: bench.task !== BenchPresenter.None && !bench.taskOver
    readonly property bool isLow: height < 600 * Tokens.textScale

    /// False when the key means nothing here.
    function pressKey(key: int): bool {
        if (!bench.open)
            return false;
        if (measure.pressKey(key))
            return true;
        switch (key) {
        case Qt.Key_Return:
        case Qt.Key_Enter:
            if (isBusy && bench.guided && !bench.question)
                bench.leaveOut();
            else if (isBusy)
                bench.next();
            else
                bench.takeAdvice();
            return true;
        case Qt.Key_Escape:
            if (isBusy)
                bench.cancel();
            return isBusy;
        case Qt.Key_Down:
            bench.choose(bench.chosen + 1);
            return true;
        case Qt.Key_Up:
            bench.choose(bench.chosen - 1);
            return true;
        case Qt.Key_F:
            bench.turnFlowFilter();
            return true;
        case Qt.Key_B:
            bench.bothSeats = !bench.bothSeats && bench.seatsChoosable;
            return true;
        case Qt.Key_S:
            bench.writeSheet();
            return true;
        case Qt.Key_P:
            bench.showSheet();
            return bench.sheetWritten;
        case Qt.Key_X:
            bench.writeCoverage();
            return true;
        default:
            return !isBusy && beginWith(key);
        }
    }

    /// Begins what the key asks for with the chosen control.
    function beginWith(key: int): bool {
        switch (key) {
        case Qt.Key_W:
            bench.begin(BenchPresenter.Wire);
            return true;
        case Qt.Key_G:
            bench.guide();
            return true;
        case Qt.Key_C:
            bench.begin(BenchPresenter.Calibrate);
            return true;
        case Qt.Key_R:
            bench.begin(BenchPresenter.Check);
            return true;
        case Qt.Key_M:
            bench.begin(BenchPresenter.Measure);
            return true;
        case Qt.Key_K:
            bench.begin(BenchPresenter.Walk);
            return true;
        case Qt.Key_O:
            measure.panel = MeasureCard.Ways;
            return true;
        case Qt.Key_V:
            if (bench.valuesExample !== "")
                measure.panel = MeasureCard.Values;
            return bench.valuesExample !== "";
        case Qt.Key_T:
            measure.panel = MeasureCard.Tolerances;
            return true;
        case Qt.Key_A:
            bench.begin(BenchPresenter.ApplyFilters);
            return true;
        case Qt.Key_U:
            bench.begin(BenchPresenter.UndoFilters);
            return true;
        default:
            return false;
        }
    }

    Component.onCompleted: bench.enter()

    Card {
        anchors.fill: parent
        visible: !place.bench.open
        ColumnLayout {
            anchors.centerIn: parent
            width: Math.min(parent.width - 2 * Tokens.gap24, 720 * Tokens.textScale)
            spacing: Tokens.gap16
            PlainText {
                Layout.fillWidth: true
                text: qsTr("The rig could not be put on the bench")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
            }
            NoticeLine {
                Layout.fillWidth: true
                verdict: Verdict.Wrong
                text: place.bench.failure
            }
            ActionButton {
                text: qsTr("Try again")
                primary: true
                onClicked: place.bench.enter()
            }
        }
    }
    ColumnLayout {
        anchors.fill: parent
        visible: place.bench.open
        spacing: Tokens.gap12
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredHeight: 3
            spacing: Tokens.gap12
            BenchControlList {
                Layout.fillHeight: true
                Layout.fillWidth: true
                Layout.preferredWidth: 270 * Tokens.textScale
                Layout.minimumWidth: 200
                Layout.maximumWidth: 320 * Tokens.textScale
                bench: place.bench
            }
            MeasureCard {
                id: measure
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 400 * Tokens.textScale
                Layout.minimumWidth: 300
                bench: place.bench
                busy: place.isBusy
                onClosed: place.forceActiveFocus()
            }
            FindingList {
                Layout.fillHeight: true
                Layout.fillWidth: true
                Layout.preferredWidth: 290 * Tokens.textScale
                Layout.minimumWidth: 220
                Layout.maximumWidth: 340 * Tokens.textScale
                bench: place.bench
                busy: place.isBusy
            }
        }
        MeasureActions {
            visible: measure.isPlotShown
            Layout.fillWidth: true
            bench: place.bench
            busy: place.isBusy
            onWaysAsked: measure.panel = MeasureCard.Ways
            onValuesAsked: measure.panel = MeasureCard.Values
            onTolerancesAsked: measure.panel = MeasureCard.Tolerances
        }
        CoverageTable {
            visible: !place.isBusy || !place.isLow
            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredHeight: 2
            bench: place.bench
        }
    }
}
