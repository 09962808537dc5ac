#pragma once

#include <vector>

#include "aircraft/groundscene.h"
#include "aircraft/practicefile.h"
#include "procedure/library.h"

namespace flowhand::test {

/// An aircraft with one control of each kind, and flows for it, made without files.
[[nodiscard]] AircraftFolder stubFolder();
/// The folder with two scenarios, each of all its flows.
[[nodiscard]] AircraftFolder withScenarios(AircraftFolder folder);
/// The same with names as long as anybody might write.
[[nodiscard]] AircraftFolder stubFolderWithLongNames();

/// Places to begin at, and what else a briefing says.
[[nodiscard]] PracticeFigures stubPractice();
/// A runway, a line with two bends and a holding point, and a second line that leaves it.
[[nodiscard]] GroundScene stubGround();
/// In the first bend of that line, a little off it.
[[nodiscard]] GroundPosition stubPosition();

/// Every control at rest, rolling at `speed` kt.
[[nodiscard]] std::vector<Value> stubValues(const Aircraft& aircraft, double speed);
void setValue(std::vector<Value>& values, const Aircraft& aircraft, const char* signal, Value value);

} // namespace flowhand::test
