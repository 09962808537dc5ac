#pragma once

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "base/phrase.h"

namespace flowhand {

/// Bad: steps on this control cannot be relied on until it is mended. Unmeasured: the measurement did not show it.
enum class Soundness : std::uint8_t { Good, Unmeasured, Caution, Bad };

[[nodiscard]] constexpr const char* soundnessName(Soundness verdict) {
    constexpr const char* kNames[] = {"good", "not measured", "caution", "bad"};
    return kNames[static_cast<std::size_t>(verdict)];
}

/// One thing that was looked at, in words.
struct Finding {
    std::string check; ///< "noise", "bounce": stable, for programs and tests
    Soundness verdict = Soundness::Good;
    Phrase text;   ///< what was measured
    Phrase reason; ///< why the verdict is what it is
    Phrase remedy; ///< what a builder can do; empty when there is nothing to do
};

[[nodiscard]] inline Soundness worstOf(const std::vector<Finding>& findings) {
    Soundness worst = Soundness::Good;
    for (const Finding& finding : findings)
        worst = std::max(worst, finding.verdict);
    return worst;
}

[[nodiscard]] inline const Finding* findingOf(const std::vector<Finding>& findings, const std::string& check) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& finding) {
        return finding.check == check;
    });
    return found == findings.end() ? nullptr : &*found;
}

} // namespace flowhand
