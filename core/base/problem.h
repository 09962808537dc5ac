#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// How much a finding in a file weighs: an error refuses the file, a warning is probably a mistake,
/// advice comes from the rules of checklist design.
enum class Severity : std::uint8_t { Error, Warning, Advice };

struct Problem {
    Severity severity = Severity::Error;
    Error error;
};

/// What a loader found wrong, in the order of the file as far as that is known.
class Problems {
public:
    void error(std::string code, std::string message, SourcePlace place) {
        add(Severity::Error, {std::move(code), std::move(message), std::move(place)});
    }
    void warning(std::string code, std::string message, SourcePlace place) {
        add(Severity::Warning, {std::move(code), std::move(message), std::move(place)});
    }
    void add(Severity severity, Error error) { m_all.push_back({severity, std::move(error)}); }

    [[nodiscard]] const std::vector<Problem>& all() const { return m_all; }
    [[nodiscard]] bool hasErrors() const {
        for (const Problem& problem : m_all)
            if (problem.severity == Severity::Error)
                return true;
        return false;
    }
    /// The first error; only when hasErrors().
    [[nodiscard]] const Error& firstError() const {
        for (const Problem& problem : m_all)
            if (problem.severity == Severity::Error)
                return problem.error;
        return m_all.front().error;
    }

private:
    std::vector<Problem> m_all;
};

} // namespace flowhand
