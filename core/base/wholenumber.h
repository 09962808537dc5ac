#pragma once

#include <cstdint>
#include <limits>
#include <type_traits>

namespace flowhand {

/// The whole number of a JSON value of nlohmann's, which itself would convert a fraction, or a number that does not
/// fit, to anything. Throws Json::out_of_range; the caller catches it with the library's other exceptions.
template <class Whole, class Json>
[[nodiscard]] Whole wholeNumber(const Json& json) {
    if (json.is_number_unsigned()) {
        const auto number = json.template get<std::uint64_t>();
        if (number <= static_cast<std::uint64_t>(std::numeric_limits<Whole>::max()))
            return static_cast<Whole>(number);
    } else if (json.is_number_integer()) {
        const auto number = json.template get<std::int64_t>();
        if constexpr (std::is_signed_v<Whole>)
            if (number >= std::numeric_limits<Whole>::min() && number <= std::numeric_limits<Whole>::max())
                return static_cast<Whole>(number);
    }
    throw Json::out_of_range::create(406, "not a whole number in its range", &json);
}

} // namespace flowhand
