#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/sample.h"
#include "procedure/aircraftfile.h"
#include "procedure/flow.h"
#include "session/handscript.h"
#include "session/session.h"

namespace flowhand {

/// What hands are told of a step.
struct StepTurn {
    bool isDue = false;  ///< or has been
    bool isOver = false; ///< done, given up, void or left out
};

/// Scripted hands: a readable list of timed hand movements, also a flow's demonstration. Format: procedures/README.md,
/// 'Hands'. Lines are done one after the other; what waits for a step or a condition is timed from the instant that
/// came true, so the same script on the same motion is the same run. Session thread only.
class Hands {
public:
    ~Hands();
    Hands(Hands&&) noexcept;
    Hands& operator=(Hands&&) noexcept;

    /// Nothing when `problems` got an error. `aircraft` must outlive the hands.
    [[nodiscard]] static std::optional<Hands> load(const std::string& file, const Aircraft& aircraft, const Flow& flow,
                                                   Problems& problems);
    /// The same from memory; `name` stands in messages as the file.
    [[nodiscard]] static std::optional<Hands> parse(const std::string& source, const std::string& name,
                                                    const Aircraft& aircraft, const Flow& flow, Problems& problems);

    /// The same from lines; `aircraft` must outlive the hands.
    Hands(const Aircraft& aircraft, std::vector<HandLine> lines);

    /// From here on only the lines of those steps are done that the pilot of this run does.
    void leaveToPartner(const Flow& flow, const SessionSetup& setup);
    /// From here on only the partner's movements of continuous controls are done, as the partner's.
    void standInForPartner(const Flow& flow, const SessionSetup& setup);

    /// The values by SignalId and the steps by index, at `time`; what waits for them is armed. The lines of a step that
    /// is over without having been due are left out.
    void see(Time time, const std::vector<Value>& values, const std::vector<StepTurn>& steps);
    /// The same where nothing has changed since: time alone may arm what waits.
    void pass(Time time);
    /// When the hands move next; kForever when they wait or are done. Never before the time seen last.
    [[nodiscard]] Time nextMove() const;
    /// Appends the movements due at `time`.
    void move(Time time, std::vector<Sample>& samples);
    /// The steps to jump to, by index, that lines moved since the last call ask for.
    [[nodiscard]] std::vector<std::size_t> takeJumps();
    /// Every line has been done.
    [[nodiscard]] bool isDone() const;

private:
    struct Script;
    std::unique_ptr<Script> m_script;
};

} // namespace flowhand
