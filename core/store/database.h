#pragma once

#include <string>

#include "base/time.h"
#include "store/connection.h"

namespace flowhand {

/// Opens a file of runs: makes it (and its folders) where there is none, refuses other programs' files and those of a
/// newer schema untouched, brings older ones up to date. What cannot be written is opened for reading.
[[nodiscard]] Result<Connection> openDatabase(const std::string& file, bool isReadOnly, Duration patience);

} // namespace flowhand
