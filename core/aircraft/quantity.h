#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/tomlfile.h"

namespace flowhand {

/// Reads the numbers of a practice or ground file into SI (angles in rad, shares in %). Those required must be above 0.
/// What is missing or wrong is an error in the reader's problems and reads as 1.
class QuantityReader {
public:
    explicit QuantityReader(TomlReader& reader) : m_reader(reader) {}

    /// Required: "112 kN", of the dimension of `unit`.
    double si(std::string_view key, std::string_view unit);
    /// May be left out, may have any sign.
    double siOr(std::string_view key, std::string_view unit, double otherwise);
    /// Required, without a unit.
    double bare(std::string_view key);
    double bareOr(std::string_view key, double otherwise);

private:
    std::optional<double> read(std::string_view key, std::string_view unit);
    double required(std::string_view key, std::optional<double> number, const std::string& example);

    TomlReader& m_reader;
};

} // namespace flowhand
