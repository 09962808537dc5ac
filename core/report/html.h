#pragma once

#include <string>
#include <string_view>

namespace flowhand {

// What the pages that are printed share.

/// Of a page to read and to print: A4, black on white. Goes into <style>.
extern const char* const kPageStyle;

/// Text as it stands in HTML and in attributes in double quotes.
[[nodiscard]] std::string escaped(std::string_view text);

/// With one decimal, as coordinates are written.
[[nodiscard]] std::string fixed(double number);

} // namespace flowhand
