#pragma once

#include <string>

namespace flowhand {

/// Where the window keeps what the pilot has chosen: `$XDG_CONFIG_HOME/flowhand/settings.toml`.
[[nodiscard]] std::string settingsFile();

/// The folder of the pilot's runs and rigs: `data_folder` of the settings file, where it is an absolute path; else
/// `$XDG_DATA_HOME/flowhand`. Read anew each time, so that the window and the command line agree at once.
[[nodiscard]] std::string dataHome();

/// dataHome() without the settings.
[[nodiscard]] std::string usualDataHome();

} // namespace flowhand
