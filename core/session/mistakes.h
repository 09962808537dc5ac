#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "procedure/flow.h"
#include "session/handscript.h"

namespace flowhand {

/// Hands that fly a flow wrongly in one way, and what the run has to find. Derived from the flow's good hands.
struct Mistake {
    std::string title;
    std::string edit; ///< its key in the file: leave_out, swap, late, before or instead_of
    std::vector<HandLine> lines;
    std::vector<std::string> finds; ///< losses in the ledger's words and order, but for margins in bands
    bool doesPass = true;           ///< the run passes all the same
    SourcePlace place;
};

/// Reads a file of mistakes; format: procedures/README.md, 'Mistakes'. `good` are the lines of the flow's hands. What
/// has an error is named in `problems` and left out.
[[nodiscard]] std::vector<Mistake> loadMistakes(const std::string& file, const std::vector<HandLine>& good,
                                                const Aircraft& aircraft, const Flow& flow, Problems& problems);
/// The same from memory; `name` stands in messages as the file.
[[nodiscard]] std::vector<Mistake> parseMistakes(std::string source, const std::string& name,
                                                 const std::vector<HandLine>& good, const Aircraft& aircraft,
                                                 const Flow& flow, Problems& problems);

} // namespace flowhand
