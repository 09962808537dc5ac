#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "base/sample.h"
#include "store/packed.h"

namespace flowhand {

/// A sample with its place in the run's order.
struct PlacedSample {
    Sample sample;
    std::uint32_t place = 0; ///< how many samples of the run came before it at the same time

    bool operator==(const PlacedSample&) const = default;
};

/// Samples of one origin, in their order; packed. Format: README.md, 'Samples of a chunk'.
[[nodiscard]] Bytes encodeChunk(const std::vector<PlacedSample>& samples);
/// Appends the samples; nothing is appended and the result is false when the bytes are damaged.
[[nodiscard]] bool decodeChunk(std::string_view packed, Origin origin, std::vector<PlacedSample>& samples);

/// What one control changed of one signal in a chunk.
struct ChunkColumn {
    SignalId signal = kNoSignal;
    Actor actor = Actor::Machine;
    ControlId control = kNoControl;
    std::vector<Time> times; ///< in the order of time
    std::vector<Value> values;
};

/// The same samples column by column, without their order across columns: a fraction of the work. Appends the columns;
/// nothing is appended and the result is false when the bytes are damaged.
[[nodiscard]] bool decodeColumns(std::string_view packed, std::vector<ChunkColumn>& columns);

/// Values by SignalId; no value: never had a sample.
using State = std::vector<std::optional<Value>>;

/// Format: README.md, 'State of a keyframe'.
[[nodiscard]] Bytes encodeState(const State& state);
[[nodiscard]] std::optional<State> decodeState(std::string_view packed);

} // namespace flowhand
