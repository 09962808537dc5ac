#pragma once

#include <string>
#include <utility>

#include "base/error.h"
#include "base/phrase.h"

namespace flowhand {

/// What somebody did at the bench led to nothing: what was seen of it and what to do again, for the window in its own
/// language, and as any Error in English.
struct BenchError : Error {
    Phrase words;

    /// Of a file or a device: as it is written.
    BenchError(Error error) : Error(std::move(error)), words(describe(*this)) {} // NOLINT(google-explicit-constructor)
    BenchError(Error error, Phrase said) : Error(std::move(error)), words(std::move(said)) {}
};

template <class T>
using BenchResult = tl::expected<T, BenchError>;

using BenchStatus = BenchResult<void>;

[[nodiscard]] inline tl::unexpected<BenchError> benchFailure(std::string code, Phrase words, SourcePlace place = {}) {
    Error error{std::move(code), words.english(), std::move(place)};
    return tl::unexpected<BenchError>(BenchError(std::move(error), std::move(words)));
}

} // namespace flowhand
