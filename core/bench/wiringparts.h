#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/wiringsolver.h"

namespace flowhand {

// What the ways of wiring have in common; private to the wiring finder.

/// More contacts make no code that a rig file has.
inline constexpr std::size_t kMostCodeContacts = 6;

/// A contact that changed, with its state at the end of each stage. One that had said nothing yet was open.
struct ContactStates {
    InputPlace place;
    std::vector<bool> closed;
    [[nodiscard]] bool isClosed(std::size_t stage) const { return closed[stage]; }
};

[[nodiscard]] std::vector<ContactStates> movedContacts(const InputWatch& watch, const std::vector<StageResult>& stages);
/// Wheels that count, and hats.
[[nodiscard]] std::vector<InputPlace> movedWheels(const InputWatch& watch, const std::vector<StageResult>& stages);
[[nodiscard]] std::vector<InputPlace> movedHats(const InputWatch& watch, const std::vector<StageResult>& stages);
/// Contacts that closed and opened again within one stage.
[[nodiscard]] std::vector<InputPlace> pulsesIn(const InputWatch& watch, const StageResult& stage);

/// Nearest count at the end of a stage; where it first stood if it had said nothing by then.
[[nodiscard]] std::int64_t rawAt(const std::vector<StageResult>& stages, std::size_t stage, InputPlace place);

/// 0..7 clockwise from up, -1 released.
[[nodiscard]] int hatEighth(const InputInfo& info, const StandingInput& standing);
/// "up", "up_right", ..., "released".
[[nodiscard]] std::string hatKey(int eighth);
[[nodiscard]] unsigned fromGray(unsigned code);

/// A TOML text.
[[nodiscard]] std::string quoted(const std::string& text);
[[nodiscard]] std::string rangeLine(std::int64_t from, std::int64_t to);
/// Nothing for an axis that only rounds.
[[nodiscard]] std::string noiseLine(double sigma);

/// The ways that are asked for by name (wiringspecial.cpp).
[[nodiscard]] BenchResult<WiringProposal> solveSpecial(const WiringWish& wish, const Aircraft& aircraft,
                                                       const InputWatch& watch, const std::vector<StageResult>& stages,
                                                       const InputNamer& nameOf);

} // namespace flowhand
