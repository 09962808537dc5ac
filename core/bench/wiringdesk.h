#pragma once

#include <string>
#include <vector>

#include "bench/inputsource.h"
#include "bench/inputwatch.h"
#include "bench/wiringedit.h"

namespace flowhand {

/// Where what was found by moving becomes lines of a rig file. Aircraft and source must outlive it. One thread.
class WiringDesk {
public:
    /// `rigFile` may be missing: then a new rig is begun.
    WiringDesk(const Aircraft& aircraft, std::string rigFile, const InputSource& source);

    /// Reads the rig as it is. Warnings of the file go to `problems`. Errors: those of the file.
    [[nodiscard]] Status load(Problems& problems);

    /// "quadrant: X", as rig files name an input.
    [[nodiscard]] std::string nameOf(InputPlace place) const;

    /// How the rig would be with this control in it, and which of its inputs another control uses as well. Errors:
    /// those of withControl() and of the rig file.
    [[nodiscard]] Result<std::vector<WiringConflict>> propose(const WiringWish& wish, const WiringProposal& proposal);
    /// Takes over what was proposed last, and writes it unless `isDry`. Error `input-wired-twice` with conflicts that
    /// are not meant (`isShared`), and those of saveRigFile().
    [[nodiscard]] Status accept(bool isShared, bool isDry);

private:
    void nameDevices(const std::vector<DeviceWish>& known);

    const Aircraft& m_aircraft;
    std::string m_rigFile;
    const InputSource& m_source;
    std::vector<WiringDevice> m_devices; ///< as the source's
    std::string m_text;                  ///< of the rig file
    std::string m_proposed;
    std::vector<WiringConflict> m_conflicts;
    std::vector<DeviceWish> m_proposedDevices;
};

} // namespace flowhand
