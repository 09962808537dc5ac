#pragma once

#include <atomic>
#include <memory>
#include <set>

#include <QObject>
#include <QStringList>
#include <QtQml/qqmlregistration.h>

#include "presenter/benchmaker.h"
#include "presenter/benchtrace.h"
#include "presenter/benchvoice.h"
#include "presenter/controlmodel.h"
#include "presenter/delaymeter.h"
#include "presenter/rowmodel.h"
#include "presenter/wiringchoice.h"

namespace flowhand {

/// The Bench place: the controls of the rig, what is measured of the chosen one, and which steps they prove. Opens the
/// devices when the place is shown and lets them go when it is left. GUI thread.
class BenchPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the program")
    Q_PROPERTY(bool open READ isOpen NOTIFY openChanged)
    Q_PROPERTY(QString failure READ failure NOTIFY openChanged)
    Q_PROPERTY(QString rigTitle READ rigTitle NOTIFY changed)
    Q_PROPERTY(QString rigFile READ rigFile NOTIFY openChanged)
    Q_PROPERTY(QString aircraftTitle READ aircraftTitle NOTIFY openChanged)
    Q_PROPERTY(QString deviceWords READ deviceWords NOTIFY changed)
    Q_PROPERTY(flowhand::RowModel* controls READ controls CONSTANT)
    Q_PROPERTY(flowhand::RowModel* findings READ findings CONSTANT)
    Q_PROPERTY(flowhand::RowModel* coverage READ coverage CONSTANT)
    Q_PROPERTY(flowhand::RowModel* notices READ notices CONSTANT)
    Q_PROPERTY(flowhand::BenchTrace* trace READ trace CONSTANT)
    Q_PROPERTY(int chosen READ chosen NOTIFY chosenChanged)
    Q_PROPERTY(QString chosenLabel READ chosenLabel NOTIFY chosenChanged)
    Q_PROPERTY(flowhand::ControlState* control READ control NOTIFY chosenChanged)
    Q_PROPERTY(QString valueText READ valueText NOTIFY changed)
    Q_PROPERTY(bool wired READ isWired NOTIFY changed)
    Q_PROPERTY(bool calibratable READ isCalibratable NOTIFY changed)
    Q_PROPERTY(int advice READ advice NOTIFY changed)
    Q_PROPERTY(QString measuredWords READ measuredWords NOTIFY changed)
    Q_PROPERTY(QString filterWords READ filterWords NOTIFY changed)
    Q_PROPERTY(QString filterChange READ filterChange NOTIFY changed)
    Q_PROPERTY(bool filterUndo READ canUndoFilter NOTIFY changed)
    Q_PROPERTY(QStringList tolerances READ tolerances NOTIFY changed)
    Q_PROPERTY(int task READ task NOTIFY changed)
    Q_PROPERTY(bool taskOver READ isTaskOver NOTIFY changed)
    Q_PROPERTY(bool taskGood READ isTaskGood NOTIFY changed)
    Q_PROPERTY(QString taskTitle READ taskTitle NOTIFY changed)
    Q_PROPERTY(QString ask READ ask NOTIFY changed)
    Q_PROPERTY(bool question READ isQuestion NOTIFY changed)
    Q_PROPERTY(QString stageWords READ stageWords NOTIFY changed)
    Q_PROPERTY(QString outcome READ outcome NOTIFY changed)
    Q_PROPERTY(QStringList flowTitles READ flowTitles NOTIFY openChanged)
    Q_PROPERTY(int flowFilter READ flowFilter WRITE setFlowFilter NOTIFY flowFilterChanged)
    Q_PROPERTY(bool seatsChoosable READ areSeatsChoosable NOTIFY openChanged)
    Q_PROPERTY(bool bothSeats READ hasBothSeats WRITE setBothSeats NOTIFY flowFilterChanged)
    Q_PROPERTY(int basicsLeft READ basicsLeft NOTIFY changed)
    Q_PROPERTY(bool guided READ isGuided NOTIFY changed)
    Q_PROPERTY(QString coverageWords READ coverageWords NOTIFY changed)
    Q_PROPERTY(QString orphanWords READ orphanWords NOTIFY changed)
    Q_PROPERTY(QString written READ written NOTIFY writtenChanged)
    Q_PROPERTY(bool sheetWritten READ isSheetWritten NOTIFY writtenChanged)
    Q_PROPERTY(flowhand::WiringChoice* wiring READ wiring CONSTANT)
    Q_PROPERTY(QString valuesExample READ valuesExample NOTIFY changed)
    Q_PROPERTY(flowhand::DelayMeter* delay READ delay CONSTANT)

public:
    /// BenchTask, for views.
    enum Task { None, Wire, Calibrate, Check, Measure, Walk, ApplyFilters, UndoFilters, SetTolerances };
    Q_ENUM(Task)

    /// `maker` and `sound` must outlive it.
    BenchPresenter(BenchMaker& maker, Sound& sound, QObject* parent = nullptr);
    ~BenchPresenter() override;

    Q_INVOKABLE void enter();
    Q_INVOKABLE void leave();
    /// Opens the rig anew if it is open: there are other aircraft and flows now. A task that goes on is done first.
    void lookAgain();
    /// A row of `controls`.
    Q_INVOKABLE void choose(int row);
    Q_INVOKABLE void begin(int task);
    /// Whether the task can be begun with the chosen control.
    Q_INVOKABLE [[nodiscard]] bool canBegin(int task) const;
    /// As `wiring` says.
    Q_INVOKABLE void beginWiring();
    /// To true values, with commas between them.
    Q_INVOKABLE void calibrateTo(const QString& values);
    /// "2 deg, 5 deg, 3 %", as `tolerances` has them.
    Q_INVOKABLE void setTolerances(const QString& words);
    Q_INVOKABLE void next();
    Q_INVOKABLE void cancel();
    /// The next thing to do with the chosen control.
    Q_INVOKABLE void takeAdvice() { begin(advice()); }
    /// Wires the basic set, one control after the other: what steers, brakes, moves and reverses the aircraft, its flap
    /// and its gear. Begins as soon as a device is connected, unless another task was begun meanwhile.
    Q_INVOKABLE void guide();
    /// Goes on with the next control of the basic set: this rig does not have this one.
    Q_INVOKABLE void leaveOut();
    /// Beside the rig file; `written` says where, or why not.
    Q_INVOKABLE void writeSheet();
    Q_INVOKABLE void writeCoverage();
    /// The sheet that was written.
    Q_INVOKABLE void showSheet();
    /// The steps of the next flow alone, after the last one those of all.
    Q_INVOKABLE void turnFlowFilter();

    /// All that is shown once more: the language is another one.
    void tellAnew();
    /// Shows the bench as it is now. Comes by itself after each change.
    void refresh();

    [[nodiscard]] bool isOpen() const { return m_bench != nullptr; }
    [[nodiscard]] QString failure() const { return m_failure; }
    [[nodiscard]] QString rigTitle() const;
    [[nodiscard]] QString rigFile() const { return m_maker.rigFile(); }
    [[nodiscard]] QString aircraftTitle() const;
    [[nodiscard]] QString deviceWords() const;
    [[nodiscard]] RowModel* controls() { return &m_controls; }
    [[nodiscard]] RowModel* findings() { return &m_findings; }
    [[nodiscard]] RowModel* coverage() { return &m_coverage; }
    [[nodiscard]] RowModel* notices() { return &m_notices; }
    [[nodiscard]] BenchTrace* trace() { return &m_trace; }
    [[nodiscard]] int chosen() const { return m_chosen; }
    [[nodiscard]] QString chosenLabel() const;
    [[nodiscard]] ControlState* control() const { return m_states.find(chosenSignal()); }
    [[nodiscard]] QString valueText() const;
    [[nodiscard]] bool isWired() const;
    [[nodiscard]] bool isCalibratable() const;
    /// The task that the chosen control needs next; Walk when all are measured.
    [[nodiscard]] int advice() const;
    [[nodiscard]] QString measuredWords() const;
    /// Of the chosen control; empty: it has none that could be set.
    [[nodiscard]] QString filterWords() const;
    /// What its measurement asks to change; empty: nothing.
    [[nodiscard]] QString filterChange() const;
    [[nodiscard]] bool canUndoFilter() const;
    /// Of the check walk: of controls that turn, of levers in degrees, of all others.
    [[nodiscard]] QStringList tolerances() const;
    [[nodiscard]] int task() const { return static_cast<int>(m_snapshot.task.task); }
    [[nodiscard]] bool isTaskOver() const { return m_snapshot.task.isOver; }
    [[nodiscard]] bool isTaskGood() const { return m_snapshot.task.isGood; }
    [[nodiscard]] QString taskTitle() const;
    /// Whether `ask` is one, which next() answers with yes and cancel() with no.
    [[nodiscard]] bool isQuestion() const { return m_snapshot.task.isQuestion; }
    [[nodiscard]] QString ask() const;
    [[nodiscard]] QString stageWords() const;
    [[nodiscard]] QString outcome() const;
    [[nodiscard]] QStringList flowTitles() const;
    /// -1: every flow.
    [[nodiscard]] int flowFilter() const { return m_flowFilter; }
    void setFlowFilter(int row);
    /// Whether this aircraft has steps of another seat than the first.
    [[nodiscard]] bool areSeatsChoosable() const;
    /// The steps of both seats, for a rig that has both; else those of the first.
    [[nodiscard]] bool hasBothSeats() const { return m_hasBothSeats; }
    void setBothSeats(bool hasBoth);
    /// How many controls of the basic set are still to be wired.
    [[nodiscard]] int basicsLeft() const { return static_cast<int>(basics().size()); }
    [[nodiscard]] bool isGuided() const { return m_isGuided; }
    [[nodiscard]] QString coverageWords() const { return m_coverageWords; }
    [[nodiscard]] QString orphanWords() const;
    [[nodiscard]] QString written() const { return m_written; }
    [[nodiscard]] bool isSheetWritten() const { return !m_sheet.isEmpty(); }
    [[nodiscard]] WiringChoice* wiring() { return &m_wiring; }
    [[nodiscard]] DelayMeter* delay() { return &m_delay; }
    /// Of the chosen control; empty: there are no values to give.
    [[nodiscard]] QString valuesExample() const;

Q_SIGNALS:
    void openChanged();
    void changed();
    void chosenChanged();
    void flowFilterChanged();
    void writtenChanged();

private:
    [[nodiscard]] SignalId chosenSignal() const;
    [[nodiscard]] const CoveredControl* coveredControl(SignalId signal) const;
    /// Its last measurement or repeat check.
    [[nodiscard]] const MeasuredControl* measuredControl(BenchTask task) const;
    /// Null where the chosen control has none.
    [[nodiscard]] const ControlFilters* filters() const;
    [[nodiscard]] const Coverage& shownCoverage() const;
    /// Rows of the basic set's controls that are neither wired nor left out, in the order in which they are asked for.
    [[nodiscard]] std::vector<int> basics() const;
    /// After a task of the guide: on to the next control, or the end of it.
    void goOnGuiding();
    void showControls();
    void showFindings();
    void showCoverage();
    void showNotices();
    void beginTrace();
    /// Says what became of a file.
    void say(const Status& status, const QString& file);

    BenchMaker& m_maker;
    QString m_failure;
    QString m_written;
    QString m_sheet; ///< the file that was written last
    QString m_coverageWords;
    BenchSnapshot m_snapshot;
    ControlModel m_states;
    RowModel m_controls, m_findings, m_coverage, m_notices;
    BenchTrace m_trace;
    BenchVoice m_voice;
    WiringChoice m_wiring;
    SteadyClock m_clock;
    DelayMeter m_delay;
    int m_chosen = 0;
    int m_flowFilter = -1;
    bool m_hasBothSeats = false;
    bool m_isGuided = false;
    bool m_isGuideWished = false; ///< it waits for a device
    bool m_isLeavingOut = false;  ///< the task of the guide ends for that
    std::set<SignalId> m_leftOut; ///< of the basic set, until the place is left
    bool m_isStale = false;       ///< to be opened anew once its task is over
    std::atomic<bool> m_isRefreshQueued = false;
    std::unique_ptr<BenchHandle> m_bench; ///< last, so that its thread ends before what it calls back goes
};

} // namespace flowhand
