#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/phrase.h"
#include "base/time.h"
#include "base/value.h"
#include "bench/coverage.h"
#include "bench/finding.h"
#include "device/hidsystem.h"
#include "procedure/flow.h"
#include "rig/rigedit.h"
#include "rig/tolerances.h"

namespace flowhand {

/// What a builder does at the bench with one control, or with all of them in turn.
enum class BenchTask : std::uint8_t {
    None,
    Wire,      ///< find the inputs that move
    Calibrate, ///< ends, centre, gates
    Check,     ///< the same again, and how far it is from the rig file
    Measure,   ///< the health of its signal
    Walk,      ///< confirm every control through its whole range
    // Done at once:
    ApplyFilters, ///< write those that followed from its measurement into the rig file
    UndoFilters,  ///< take the last of these changes back
    SetTolerances ///< of the check walk, in the rig file
};

/// A task, and what the builder says about it beforehand.
struct BenchWish {
    BenchTask task = BenchTask::None;
    SignalId signal = kNoSignal;
    /// Of Wire as parseWiringWish() reads it; empty: whatever moves. Of Calibrate the true values of the places that
    /// will be held, as giveValues() reads them; empty: those of the rig file, if any. Of SetTolerances the three of
    /// WalkTolerances in turn: "2 deg, 5 deg, 3 %".
    std::string words = {};
};

/// The quantity that is judged of a control, changed; nothing: unknown. Positions count from 0, between two is halfway.
struct BenchPoint {
    Time time{};
    std::optional<double> value;

    bool operator==(const BenchPoint&) const = default;
};

/// How the present task goes. After its end it stays until the next one begins.
struct BenchTaskView {
    BenchTask task = BenchTask::None;
    SignalId signal = kNoSignal; ///< that it is about now
    Phrase ask;                  ///< what the builder shall do now
    bool isQuestion = false;     ///< `ask` is one: next() says yes, cancel() no
    std::size_t stage = 0;       ///< 0 .. stageCount - 1
    std::size_t stageCount = 0;
    std::size_t goodCount = 0; ///< stages of a walk that were confirmed; of other tasks 1 once it came out well
    bool isOver = false;
    bool isGood = false;         ///< only when over
    std::vector<Phrase> outcome; ///< what came of it, a sentence each
    bool operator==(const BenchTaskView&) const = default;
};

struct BenchDevice {
    std::string name; ///< in the rig file, or of the product where the rig does not name it
    bool isConnected = false;
    Phrase message; ///< what is wrong with it and the way out

    bool operator==(const BenchDevice&) const = default;
};

/// What was measured of one control last, or checked again.
struct MeasuredControl {
    SignalId signal = kNoSignal;
    BenchTask task = BenchTask::Measure; ///< or Check
    std::string date;
    bool isStale = false; ///< wired or calibrated anew since
    std::vector<Finding> findings;
};

/// The filters of one control: what they cost now, and what its measurement asks for.
struct ControlFilters {
    SignalId signal = kNoSignal;
    std::vector<Phrase> words;     ///< those of the rig file: "median of 4 ms"
    Duration delay{};              ///< by which those make it late
    Duration allowed{};            ///< so late they may make it
    std::string allowedOf;         ///< title of the step that allows no more; empty: kMostFilterDelay does
    std::vector<RigKey> change;    ///< that its measurement advised and the rig file does not have
    Duration changedDelay{};       ///< by which they make it late with the change
    std::vector<Finding> findings; ///< why the change, and what no filter can mend
    bool canUndo = false;          ///< a change was written before and stands
};

/// An input that makes two controls.
struct SharedInput {
    SignalId signal = kNoSignal;
    std::string input;   ///< "quadrant: X"
    std::string control; ///< the other one
};

/// The travel of a lever with gates, in counts, and its gates as the rig file has them.
struct GateTravel {
    struct Gate {
        std::string position;
        double at = 0.0;
        double band = 0.0; ///< either side
    };
    SignalId signal = kNoSignal;
    double lowest = 0.0; ///< of the outermost gates, with some room
    double highest = 1.0;
    std::vector<Gate> gates;
};

/// What a view shows; a copy.
struct BenchSnapshot {
    Time now{};
    Phrase rigTitle;
    std::vector<Value> values;  ///< of the controls, by SignalId
    std::vector<bool> stirring; ///< by SignalId: moved within the last second
    std::vector<BenchDevice> devices;
    std::shared_ptr<const Coverage> coverage;                     ///< of all flows, the first seat's steps; never null
    std::shared_ptr<const Coverage> bothSeats;                    ///< the same of all seats; never null
    std::shared_ptr<const std::vector<MeasuredControl>> measured; ///< never null
    std::shared_ptr<const std::vector<ControlFilters>> filters;   ///< of controls that have any; never null
    std::shared_ptr<const std::vector<SharedInput>> shared;       ///< never null
    std::shared_ptr<const std::vector<GateTravel>> travels;       ///< of all levers with gates; never null
    WalkTolerances tolerances;
    BenchTaskView task;
    std::vector<Phrase> notices; ///< of the rig, its devices and its evidence, newest last
};

/// A rig on the bench, with its devices read on a thread of its own: where the controls stand, how far their proof has
/// come, and the task that a builder does with them. Every function may be called from any thread.
class Workbench {
public:
    struct Parts {
        const Aircraft& aircraft;
        std::vector<const Flow*> flows; ///< of the coverage
        std::string rigFile;            ///< may be missing: then the first control that is wired begins it
        HidSystem& system;
        const Clock& clock;
    };

    /// What the parts refer to must outlive it. `onChange` is called on the bench's thread, at most 60 times a second.
    /// Errors: those of the rig file and of its evidence.
    [[nodiscard]] static Result<std::unique_ptr<Workbench>> open(Parts parts, std::function<void()> onChange);
    /// Ends the task and joins the thread.
    ~Workbench();
    Workbench(const Workbench&) = delete;
    Workbench& operator=(const Workbench&) = delete;

    [[nodiscard]] BenchSnapshot snapshot() const;
    /// Of the control that takeTrace() is about.
    void watch(SignalId signal);
    /// What the watched control did since the last call, of a lever with gates the counts of its axis; the oldest is
    /// dropped when nobody asks for 10 s and more.
    [[nodiscard]] std::vector<BenchPoint> takeTrace();

    /// Another task that goes on is given up.
    void begin(BenchWish wish);
    /// Leaves the present control of a walk out, ends a measurement with what there is, or answers a question with yes.
    void next();
    void cancel();

private:
    struct State;
    explicit Workbench(std::unique_ptr<State> state);
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
