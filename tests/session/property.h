#pragma once

#include <rapidcheck.h>

#include <iostream>
#include <string>

namespace flowhand::test {

/// Sanitizers slow each case down by about as much.
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
inline constexpr int kSanitizerShare = 20;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
inline constexpr int kSanitizerShare = 20;
#else
inline constexpr int kSanitizerShare = 1;
#endif
#else
inline constexpr int kSanitizerShare = 1;
#endif

/// Checks a property on more random cases than rapidcheck does by itself.
template <class Property>
bool holdsFor(int cases, const std::string& what, Property property) {
    rc::detail::TestMetadata metadata;
    metadata.description = what;
    rc::detail::TestParams params = rc::detail::configuration().testParams;
    params.maxSuccess = cases / kSanitizerShare;
    const rc::detail::TestResult result = rc::detail::checkTestable(std::move(property), metadata, params);
    if (!result.template is<rc::detail::SuccessResult>()) {
        std::cerr << what << '\n';
        rc::detail::printResultMessage(result, std::cerr);
        std::cerr << '\n';
        return false;
    }
    return true;
}

} // namespace flowhand::test
