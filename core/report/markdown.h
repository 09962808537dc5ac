#pragma once

#include <functional>
#include <string>

namespace flowhand {

/// Markdown as HTML, as far as the manual's pages use it: headings, paragraphs, lists with '-' and numbers, tables,
/// code blocks by four blanks or fences; within a line bold, italics, code, links and pictures. What is not one of
/// these stands as it is written. `picture` gives what a picture's name becomes in `src`; empty: only its description
/// is shown.
[[nodiscard]] std::string markdownHtml(const std::string& markdown,
                                       const std::function<std::string(const std::string&)>& picture);

} // namespace flowhand
