#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "device/device.h"

namespace flowhand {

/// Tells which of several devices a person moves, so that equal units without serials can be told apart: the one with
/// the largest change of an input, measured against that input's own noise. Told everything; not thread-safe.
class WiggleWatch {
public:
    /// A device came (anew); what it said before is forgotten.
    void connect(DeviceIndex device, std::vector<InputInfo> inputs);
    void lose(DeviceIndex device);

    /// Until watch() readings tell how noisy each input is at rest, from then on how far it has moved.
    void take(const Reading& reading);
    void watch();

    struct Moved {
        DeviceIndex device = 0;
        std::string input; ///< the name of the one that moved most
    };
    /// Nothing while no device stands out.
    [[nodiscard]] std::optional<Moved> moved() const;

private:
    struct Input {
        InputInfo info;
        bool isKnown = false;
        double rest = 0.0;  ///< where it stood when the watch began, or when it was first heard; a share of its travel
        double noise = 0.0; ///< farthest from where it was first heard while at rest
        double last = 0.0;
        double change = 0.0; ///< farthest from `rest` since the watch began
    };
    using Inputs = std::vector<Input>;

    [[nodiscard]] static double shareOf(const Reading& reading, const InputInfo& info);
    /// The change of an input as a multiple of its noise.
    [[nodiscard]] static double strength(const Input& input);
    [[nodiscard]] static const Input* strongest(const Inputs& inputs);

    std::vector<Inputs> m_devices; ///< by DeviceIndex; empty: not there
    bool m_isWatching = false;
};

} // namespace flowhand
