#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include <QString>

#include "aircraft/groundscene.h"
#include "aircraft/practicefile.h"
#include "base/error.h"
#include "procedure/library.h"
#include "session/run.h"

namespace flowhand {

/// A run as the window uses it. Functions of the GUI thread; the run itself is on a thread of its own.
class RunHandle {
public:
    virtual ~RunHandle() = default;
    virtual void command(CommandKind kind, const std::string& text) = 0;
    /// The practice aircraft goes along, where the step says.
    virtual void jump(const std::string& step) = 0;
    virtual void moveOnScreen(SignalId signal, Value value) = 0;
    [[nodiscard]] virtual RunSnapshot snapshot() const = 0;
    /// Fixed for the run.
    [[nodiscard]] virtual SessionSetup setup() const = 0;
    /// Fixed for the run. Null: there is no practice aircraft on an airport's ground.
    [[nodiscard]] virtual std::shared_ptr<const GroundScene> scene() const = 0;
};

/// Whose hands fly.
enum class HandsChoice { Screen, Rig, Demonstration };

/// What the pilot chose. `folder`, `flow` and `scenario` outlive the run.
struct FlightChoice {
    const AircraftFolder* folder = nullptr;
    const Flow* flow = nullptr;
    const Scenario* scenario = nullptr; ///< none: the flow alone; else `flow` is its first
    std::string feed;                   ///< where the motion comes from; empty: the practice aircraft
    std::string place;                  ///< where it begins; empty: as the scenario or the flow has it
    std::string from;                   ///< id of the step that it begins with; empty: the first
    int slowness = 1;                   ///< the run goes so many times slower; hands do not
    std::uint64_t seed = 1;             ///< of the partner's pace and of what happens
    HandsChoice hands = HandsChoice::Screen;
    std::string help = "guided"; ///< "guided", "prompted", "from memory"; a demonstration is guided
    int delayMillis = 0;         ///< of sound and input, taken off response times
    std::string pilot;           ///< who flies; empty: nobody said
};

/// What the pilot should know of the devices that are connected.
struct ConnectedDevices {
    bool hasControls = false;     ///< levers, pedals or switches that can be read
    std::vector<QString> remarks; ///< one sentence each
};

/// Makes runs: the real ones, or a test's. GUI thread.
class RunMaker {
public:
    virtual ~RunMaker() = default;
    /// `onChange` is called from any thread.
    [[nodiscard]] virtual Result<std::unique_ptr<RunHandle>> make(const FlightChoice& wish,
                                                                  std::function<void()> onChange) = 0;
    /// Whether there are scripted hands that fly this.
    [[nodiscard]] virtual bool canDemonstrate(const FlightChoice& choice) const = 0;
    /// How the practice aircraft of this folder is, and where it can begin.
    [[nodiscard]] virtual Result<PracticeFigures> practice(const AircraftFolder& folder) const = 0;
    /// The rig that would be used with hardware; empty when there is none.
    [[nodiscard]] virtual QString rigTitle() const = 0;
    /// What is connected now.
    [[nodiscard]] virtual ConnectedDevices devices() const = 0;
};

} // namespace flowhand
