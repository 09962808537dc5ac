#pragma once

#include <memory>
#include <string>
#include <vector>

#include "aircraft/groundscene.h"
#include "base/problem.h"
#include "base/sample.h"
#include "procedure/aircraftfile.h"
#include "procedure/failure.h"
#include "procedure/surroundings.h"

namespace flowhand {

/// The practice aircraft: moved by the same cockpit signals that are judged. Fixed step of 10 ms; step k sees the
/// samples up to its time; motion leaves at 20 Hz, rounded. The same input on the same build gives the same bytes.
/// Session thread only.
class PracticeAircraft {
public:
    static constexpr Duration kStep = std::chrono::milliseconds(10);
    static constexpr Duration kMotionPeriod = std::chrono::milliseconds(50);

    ~PracticeAircraft();
    PracticeAircraft(PracticeAircraft&&) noexcept;

    /// `aircraft` must outlive it. `place` is a start place of the practice file; the error lists those there are.
    [[nodiscard]] static Result<PracticeAircraft> create(const Aircraft& aircraft, const std::string& place,
                                                         const Surroundings& surroundings = {});

    /// Appends every motion signal as the start place has it, at time 0. Before the first step; changes follow from
    /// there.
    void begin(std::vector<Sample>& motion);
    /// A control changed (any actor). Time not before the last step. A control not heard of yet stands where the start
    /// place has it.
    void take(const Sample& sample);
    /// The time of its next step; the first is at kStep.
    [[nodiscard]] Time nextStep() const;
    /// Makes the next step; at motion times appends the motion signals that changed.
    void step(std::vector<Sample>& motion);

    /// Something fails, from the next step on.
    void fail(const Failure& failure);
    /// What it moves on, and how large it is: for views.
    [[nodiscard]] GroundScene scene() const;
    /// The same of an aircraft that is not flown now, by its files. Any thread.
    [[nodiscard]] static Result<GroundScene> sceneOf(const Aircraft& aircraft);
    /// Where it is now: for views, no verdict depends on it.
    [[nodiscard]] GroundPosition position() const;
    /// Whether the ground plan has a route of this name.
    [[nodiscard]] bool hasRoute(const std::string& route) const;
    /// Another line on the ground to follow from here on; nothing happens when there is none of this name.
    void follow(const std::string& route);
    /// Puts it at another of its places, whole and loaded as that place has it. What stands elsewhere than the place
    /// gives it has to be taken anew; then comes settle(). The error lists the places.
    [[nodiscard]] Status put(const std::string& place);
    /// After put(), before the next step: it is at that place, engines and airframe at rest where the controls want
    /// them now. Appends the motion signals that changed.
    void settle(std::vector<Sample>& motion);
    /// Its time begins again at 0 where it is now, for another run; begin() tells all of its motion again.
    void restart();

private:
    struct Model;
    explicit PracticeAircraft(std::unique_ptr<Model> model);
    std::unique_ptr<Model> m_model;
};

} // namespace flowhand
