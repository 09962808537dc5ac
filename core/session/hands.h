#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/sample.h"
#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

namespace flowhand {

/// Scripted hands: a readable list of timed hand movements, also a flow's demonstration. Format: procedures/README.md,
/// 'Hands'. Moves that wait for a condition or for a step are timed from the instant that came true, so the same script
/// is the same run.
class Hands {
public:
    ~Hands();
    Hands(Hands&&) noexcept;
    Hands& operator=(Hands&&) noexcept;

    [[nodiscard]] static std::optional<Hands> load(const std::string& file, const Aircraft& aircraft, const Flow& flow,
                                                   Problems& problems);

    /// The session's values and step states at `time`; what waits for them is armed.
    void see(Time time, const std::vector<Value>& values, const std::vector<bool>& stepDue);
    /// When the hands move next; kForever when they wait or are done.
    [[nodiscard]] Time nextMove() const;
    /// The movements due at `time`.
    void move(Time time, std::vector<Sample>& samples);
    [[nodiscard]] bool isDone() const;

private:
    struct Script;
    explicit Hands(std::unique_ptr<Script> script);
    std::unique_ptr<Script> m_script;
};

} // namespace flowhand
