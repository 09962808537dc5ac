#include "base/replacefile.h"
#include "rig/rigfile.h"

namespace flowhand {

Status saveRigFile(const std::string& path, const std::string& newSource, const SignalTable& signals,
                   std::size_t controlCount) {
    Problems problems;
    if (!parseRigFile(newSource, path, signals, controlCount, problems))
        return tl::unexpected<Error>(problems.firstError());
    return replaceFile(path, newSource);
}

} // namespace flowhand
