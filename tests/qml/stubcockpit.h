#pragma once

#include <vector>

#include "procedure/library.h"

namespace flowhand::test {

/// An aircraft with one control of each kind, and flows for it, made without files.
[[nodiscard]] AircraftFolder stubFolder();
/// The same with two scenarios, each of all its flows.
[[nodiscard]] AircraftFolder stubFolderWithScenarios();
/// The same with names as long as anybody might write.
[[nodiscard]] AircraftFolder stubFolderWithLongNames();

/// Every control at rest, rolling at `speed` kt.
[[nodiscard]] std::vector<Value> stubValues(const Aircraft& aircraft, double speed);
void setValue(std::vector<Value>& values, const Aircraft& aircraft, const char* signal, Value value);

} // namespace flowhand::test
