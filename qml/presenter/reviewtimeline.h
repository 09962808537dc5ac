#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "presenter/lanebars.h"
#include "presenter/reviewrows.h"
#include "presenter/rowmodel.h"
#include "presenter/runplayer.h"
#include "presenter/timewindow.h"
#include "review/timeline.h"

namespace flowhand {

/// A run along its time as it is looked at: the stretch that is shown, the held time that every lane is read out at,
/// the marks A and B, and playing. Times in seconds from the start of the run. GUI thread.
class ReviewTimeline : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the Review place's presenter")
    Q_PROPERTY(double length READ length NOTIFY runChanged)
    Q_PROPERTY(double from READ from NOTIFY viewChanged)
    Q_PROPERTY(double to READ to NOTIFY viewChanged)
    Q_PROPERTY(double now READ now NOTIFY nowChanged)
    Q_PROPERTY(QString nowText READ nowText NOTIFY nowChanged)
    Q_PROPERTY(double markA READ markA NOTIFY marksChanged)
    Q_PROPERTY(double markB READ markB NOTIFY marksChanged)
    Q_PROPERTY(QString marksText READ marksText NOTIFY marksChanged)
    Q_PROPERTY(bool playing READ isPlaying NOTIFY playChanged)
    Q_PROPERTY(bool looping READ isLooping NOTIFY playChanged)
    Q_PROPERTY(QString paceText READ paceText NOTIFY playChanged)
    Q_PROPERTY(int chosenStep READ chosenStep NOTIFY chosenStepChanged)
    Q_PROPERTY(flowhand::RowModel* lanes READ lanes CONSTANT)
    Q_PROPERTY(flowhand::RowModel* choices READ choices CONSTANT)

public:
    /// Of a lane: which bars it draws, or that it draws a signal.
    enum Lane { Steps, Guards, Calls, Holds, Notes, SignalLane };
    Q_ENUM(Lane)

    explicit ReviewTimeline(QObject* parent);

    /// `timeline` and what it borrows must outlive what is shown.
    void show(const Timeline& timeline, const std::vector<Note>& notes);
    void setNotes(const std::vector<Note>& notes);
    /// Everything that is shown, in the language of now.
    void tellAnew();
    void setChosenStep(int step);

    Q_INVOKABLE void hold(double time);
    /// Holds what lies at this share of the view.
    Q_INVOKABLE void scrub(double share);
    Q_INVOKABLE void zoom(double factor, double share);
    /// About the held time, or the middle where that is not seen.
    Q_INVOKABLE void zoomHeld(double factor);
    Q_INVOKABLE void pan(double share);
    Q_INVOKABLE void fit();
    /// Puts the stretch that is shown so that `time` is in its middle.
    Q_INVOKABLE void centre(double time);
    /// By a step of the view that an eye just sees.
    Q_INVOKABLE void nudge(int steps);
    Q_INVOKABLE void nextDeviation() { jump(m_timeline->nextDeviation(m_now)); }
    Q_INVOKABLE void previousDeviation() { jump(m_timeline->previousDeviation(m_now)); }
    Q_INVOKABLE void nextStep() { jump(m_timeline->nextStep(m_now)); }
    Q_INVOKABLE void previousStep() { jump(m_timeline->previousStep(m_now)); }
    /// Of the signals that have a lane.
    Q_INVOKABLE void nextChange() { jump(m_timeline->nextChange(m_shown, m_now)); }
    Q_INVOKABLE void previousChange() { jump(m_timeline->previousChange(m_shown, m_now)); }
    Q_INVOKABLE void setA();
    Q_INVOKABLE void setB();
    Q_INVOKABLE void clearMarks();
    Q_INVOKABLE void togglePlay();
    /// Between A and B; without them, the stretch that is shown.
    Q_INVOKABLE void toggleLoop();
    Q_INVOKABLE void slower();
    Q_INVOKABLE void faster();
    /// `passed` seconds of real time have gone by; to be called while it plays.
    Q_INVOKABLE void advance(double passed);
    /// Gives the signal a lane, or takes it away.
    Q_INVOKABLE void toggleSignal(int signal);

    [[nodiscard]] bool isEmpty() const { return m_timeline == nullptr; }
    /// Only where it is not empty.
    [[nodiscard]] const Timeline& timeline() const { return *m_timeline; }
    [[nodiscard]] const TimeWindow& window() const { return m_window; }
    [[nodiscard]] const LaneBars& bars(int lane) const { return m_bars[static_cast<std::size_t>(lane)]; }
    [[nodiscard]] const std::vector<LaneLimit>& limits(SignalId signal) const { return m_limits[indexOf(signal)]; }
    [[nodiscard]] Time heldTime() const { return m_now; }

    [[nodiscard]] double length() const { return m_timeline != nullptr ? seconds(m_timeline->length()) : 0.0; }
    [[nodiscard]] double from() const { return seconds(m_window.from()); }
    [[nodiscard]] double to() const { return seconds(m_window.to()); }
    [[nodiscard]] double now() const { return seconds(m_now); }
    [[nodiscard]] QString nowText() const;
    [[nodiscard]] double markA() const { return m_a ? seconds(*m_a) : -1.0; }
    [[nodiscard]] double markB() const { return m_b ? seconds(*m_b) : -1.0; }
    /// "Δ 2.50 s · A 0:12.3 · B 0:14.8".
    [[nodiscard]] QString marksText() const;
    [[nodiscard]] bool isPlaying() const { return m_player.isPlaying(); }
    [[nodiscard]] double pace() const { return m_player.pace(); }
    [[nodiscard]] bool isLooping() const { return m_loop.has_value(); }
    [[nodiscard]] QString paceText() const;
    [[nodiscard]] int chosenStep() const { return m_chosenStep; }
    [[nodiscard]] RowModel* lanes() { return &m_lanes; }
    [[nodiscard]] RowModel* choices() { return &m_choices; }

Q_SIGNALS:
    void runChanged();
    void viewChanged();
    void nowChanged();
    void marksChanged();
    void playChanged();
    void chosenStepChanged();
    void barsChanged();
    /// Playing came from one held time to another; not when the held time was put elsewhere.
    void played(double from, double to);

private:
    void setNow(Time now);
    void jump(const std::optional<Time>& time);
    void showLanes();
    void showChoices();
    [[nodiscard]] LaneRow barRow(Lane lane, const QString& label) const;
    [[nodiscard]] LaneRow signalRow(SignalId signal) const;
    [[nodiscard]] QString heldBars(Lane lane) const;

    const Timeline* m_timeline = nullptr;
    std::vector<LaneBars> m_bars;                 ///< by Lane, without SignalLane
    std::vector<std::vector<LaneLimit>> m_limits; ///< by SignalId
    std::vector<SignalId> m_shown;
    TimeWindow m_window;
    RunPlayer m_player;
    std::optional<LoopStretch> m_loop;
    Time m_now{};
    std::optional<Time> m_a, m_b;
    int m_chosenStep = -1;
    RowModel m_lanes, m_choices;
};

} // namespace flowhand
