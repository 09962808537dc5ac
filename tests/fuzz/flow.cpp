#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

using namespace flowhand;

namespace {

constexpr const char* kAircraft = R"(format = 1
title = "Fuzz bench"
engines = 2
seats = ["captain", "first_officer"]
[values]
limit = "80 kt"
planned_flap = "12"
[[control]]
name = "tiller"
label = "Tiller"
area = "left"
kind = "wheel"
unit = "deg"
range = [-70, 70]
continuous = true
seats = ["captain"]
[[control]]
name = "flap_lever"
label = "Flap lever"
area = "pedestal"
kind = "gated lever"
positions = ["up", "4", "12"]
[[control]]
name = "reply_button"
label = "Reply button"
area = "yoke"
kind = "button"
)";

const Aircraft& bench() {
    static const Aircraft aircraft = [] {
        Problems problems;
        std::optional<Aircraft> loaded = parseAircraft(kAircraft, "bench/aircraft.toml", problems);
        if (!loaded)
            std::abort();
        return std::move(*loaded);
    }();
    return aircraft;
}

} // namespace

/// Any bytes as a flow and as an aircraft file: a value, or at least one error; never both, never neither.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string source(reinterpret_cast<const char*>(data), size);
    Problems ofFlow;
    if (parseFlow(source, "fuzz/flow.toml", bench(), ofFlow).has_value() == ofFlow.hasErrors())
        std::abort();
    Problems ofAircraft;
    if (parseAircraft(source, "fuzz/aircraft.toml", ofAircraft).has_value() == ofAircraft.hasErrors())
        std::abort();
    return 0;
}
