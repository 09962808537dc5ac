#pragma once

#include <memory>
#include <string>

#include "base/error.h"
#include "procedure/flow.h"
#include "session/record.h"

namespace flowhand {

/// A flow with its aircraft, to judge a stored run by.
struct OtherFlow {
    std::shared_ptr<const Aircraft> aircraft;
    std::shared_ptr<const Flow> flow;
};

/// The flow that `path` means for a run of this header: a flow file; or, by the run's flow id, a folder of an aircraft
/// or the folder above the folders of the aircraft. Errors: those of the files, `unknown-flow`.
[[nodiscard]] Result<OtherFlow> otherFlow(const std::string& path, const RunHeader& header);

} // namespace flowhand
