#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/phrase.h"
#include "base/sample.h"
#include "bench/reach.h"
#include "procedure/aircraftfile.h"
#include "rig/tolerances.h"

namespace flowhand {

/// What the walk saw of one signal of a control.
struct WalkedSignal {
    static constexpr std::size_t kParts = 20; ///< of a range, each of which must be passed: 5 % of the travel

    SignalId signal = kNoSignal;
    bool isConfirmed = false;
    Phrase missing; ///< what was not seen yet, in words and with figures; empty when confirmed
    Phrase open;    ///< the same without figures, which would change with every movement

    // Of an axis, in the signal's unit.
    double tolerance = 0.0;
    std::optional<double> lowest; ///< nearest to its low end that it stood still at
    std::optional<double> highest;
    std::optional<double> centre; ///< where it came to rest after both ends, where it has a centre
    std::array<bool, kParts> passed{};

    std::vector<bool> seen; ///< of states: by index into Reach::values
    struct Point {
        Time time{}; ///< from when the control was asked for
        double value = 0.0;
    };
    std::vector<Point> trace; ///< thinned, for a small plot; unknown values are left out
};

enum class WalkOutcome : std::uint8_t { Open, Confirmed, NotConfirmed };

/// One control of the rig.
struct WalkedControl {
    std::size_t control = 0; ///< index into RigFile::controls
    std::string name;
    std::vector<WalkedSignal> signals;
    WalkOutcome outcome = WalkOutcome::Open;
    Time begin{}; ///< when it was asked for
    Time end{};
    std::vector<std::string> movedInstead; ///< labels of what moved while this was asked for, once each
};

/// Asks for one control of the rig after the other and watches it go through its whole range. Told samples and the
/// time. `aircraft` and `reaches` must outlive it.
class Walk {
public:
    /// Longer than a selector or lever rests on the way (the judge's dwell in a gate).
    static constexpr Duration kDwell = std::chrono::milliseconds(500);
    /// So long at one place is standing still (the judge's settling time).
    static constexpr Duration kSettle = std::chrono::milliseconds(300);

    struct Setup {
        WalkTolerances tolerances;
        Duration patience = std::chrono::seconds(60); ///< for each control
        std::vector<SignalId> only = {};              ///< empty: all that the rig has
    };

    Walk(const Aircraft& aircraft, const RigFile& rig, const std::vector<Reach>& reaches, Setup setup, Time begin);

    void take(const Sample& sample);
    /// True when a control was confirmed or given up.
    bool advance(Time now);
    /// Gives up the control that is asked for.
    void skip(Time now);

    [[nodiscard]] bool isDone() const { return m_at == m_controls.size(); }
    /// What the builder shall do now: "Flap lever: select every position. Still open: 12, 22."
    [[nodiscard]] Phrase ask() const;
    [[nodiscard]] const std::vector<WalkedControl>& controls() const { return m_controls; }
    /// The one that is asked for; only before the end.
    [[nodiscard]] const WalkedControl& current() const { return m_controls[m_at]; }
    [[nodiscard]] bool isAllConfirmed() const;

private:
    /// Where a signal stands, and since when it stays near there.
    struct Standing {
        Value value;
        Value anchor;
        Time since{};
    };

    [[nodiscard]] const Reach& reach(SignalId id) const { return m_reaches[indexOf(id)]; }
    [[nodiscard]] double toleranceOf(SignalId id) const;
    [[nodiscard]] bool isNear(SignalId id, Value a, Value b) const;
    void note(WalkedSignal& signal, Value value, Time time);
    void mark(WalkedSignal& signal, Value value) const;
    void settle(WalkedSignal& signal, const Standing& standing, Time now);
    void judge(WalkedSignal& signal) const;
    void judgeAxis(WalkedSignal& signal) const;
    void judgeStates(WalkedSignal& signal) const;
    void finish(WalkOutcome outcome, Time now);

    const Aircraft& m_aircraft;
    const std::vector<Reach>& m_reaches;
    Setup m_setup;
    std::vector<WalkedControl> m_controls;
    std::vector<Standing> m_standing; ///< by SignalId
    std::size_t m_at = 0;
};

} // namespace flowhand
