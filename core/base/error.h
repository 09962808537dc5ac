#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace flowhand {

/// A place in a text file a person wrote. Line and column count from 1; 0 = not known.
struct SourcePlace {
    std::string file;
    int line = 0;
    int column = 0;

    bool operator==(const SourcePlace&) const = default;
};

/// What went wrong, where, and what to do about it, in words for the person at the controls.
/// `code` is stable and meant for programs and tests: lower case, words joined by '-'.
struct Error {
    std::string code;
    std::string message;
    SourcePlace place;

    bool operator==(const Error&) const = default;
};

/// The value, or the one Error that kept us from having it. Core never lets an exception out.
template <class T>
using Result = tl::expected<T, Error>;

using Status = Result<void>;

[[nodiscard]] inline tl::unexpected<Error> failure(std::string code, std::string message, SourcePlace place = {}) {
    return tl::unexpected<Error>(Error{std::move(code), std::move(message), std::move(place)});
}

/// `file:line:column: message`, leaving out what is not known.
[[nodiscard]] std::string describe(const Error& error);

} // namespace flowhand
