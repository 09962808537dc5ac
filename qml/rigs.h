#pragma once

#include <string>

#include <QString>

/// Where the pilot's own rig files are.
namespace flowhand {

[[nodiscard]] std::string ownRigs();
/// The first rig file of the folder, by name; empty when there is none.
[[nodiscard]] std::string firstRig();
/// The one that is begun where there is none.
[[nodiscard]] std::string newRigFile();
/// Its title; empty when there is no such file.
[[nodiscard]] QString rigTitleOf(const std::string& rigFile);

} // namespace flowhand
