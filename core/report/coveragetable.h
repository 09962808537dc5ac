#pragma once

#include <string>

#include "bench/coverage.h"

namespace flowhand {

/// A coverage table to be shown. Borrows all of it.
struct CoverageTable {
    const std::string& rigTitle;
    const CoverageInput& input;
    const Coverage& coverage;
};

/// For a terminal: what cannot be confirmed and why, the steps, the controls, the orphans.
[[nodiscard]] std::string coverageText(const CoverageTable& table);
/// A row for each step and each control that it needs, with a head line (RFC 4180, lines end in CR LF).
[[nodiscard]] std::string coverageCsv(const CoverageTable& table);
/// A JSON object.
[[nodiscard]] std::string coverageJson(const CoverageTable& table);

} // namespace flowhand
