#pragma once

#include <vector>

#include "presenter/rows.h"
#include "procedure/flow.h"

/// The way from gate to gate as a line, and where flows lie on it: lengths 0..1 across, heights 0..1 up. From the phase
/// list and the flow files alone.
namespace flowhand {

/// Where a flow lies, and what that stretch is called: "Taxi out to line-up".
struct RibbonStretch {
    double from = 0.0;
    double to = 0.0;
    QString title;
};

[[nodiscard]] std::vector<PhaseRow> phaseRows();
/// Height of the line at `across`: level in phases that end as high as they begin, smooth between.
[[nodiscard]] double ribbonHeight(double across);
[[nodiscard]] RibbonStretch stretchOf(const Flow& flow);

} // namespace flowhand
