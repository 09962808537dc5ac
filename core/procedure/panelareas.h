#pragma once

#include <string>
#include <vector>

#include "procedure/aircraftfile.h"

namespace flowhand {

/// A part of the cockpit as a block of a plan, for pictures of where a flow leads the hand. In hundredths of the plan's
/// width and height, from its top left corner.
struct PanelArea {
    std::string name; ///< as in CockpitControl::area
    double left = 0.0;
    double top = 0.0;
    double width = 0.0;
    double height = 0.0;
};

/// Reads the [[area]] tables of an aircraft file, whose root `reader` reads. A problem for each block that reaches out
/// of the plan, two of one name, and a control's area without a block.
[[nodiscard]] std::vector<PanelArea> readPanelAreas(TomlReader& reader, const std::vector<CockpitControl>& controls,
                                                    Problems& problems);

/// The blocks of an aircraft that is loaded, in the file's order. A file without any: bars of equal height, in the
/// order in which its controls name them.
[[nodiscard]] std::vector<PanelArea> panelAreas(const Aircraft& aircraft);

} // namespace flowhand
