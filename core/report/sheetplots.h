#pragma once

#include <string>

#include "report/sheetmeasurement.h"

namespace flowhand {

// Small drawings for a page (SVG), black on white so that they print. Empty where there is nothing to draw.

/// The lever's travel: how long it was at each count, its gates with their bands, ends, centre with dead band, idle.
[[nodiscard]] std::string travelPlot(const SheetAxis& axis);
/// The distribution of the noise at rest, with the normal one of the same deviation and 3 sigma to either side.
[[nodiscard]] std::string noisePlot(const SheetAxis& axis);
/// How long a contact bounced, with the longest of the published measurements.
[[nodiscard]] std::string bouncePlot(const SheetContact& contact);

} // namespace flowhand
