#pragma once

#include <string>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// A page of the manual.
struct ManualPage {
    std::string id;    ///< its file's name without number and ending: "first_ten_minutes"
    std::string title; ///< its first heading
    std::string text;  ///< Markdown; the cautions are its last lines
};

/// What stands at the end of every page.
extern const char* const kManualCautions;

/// The pages in `folder`, in the order of their files' names. Errors: `no-manual`, those of readFile().
[[nodiscard]] Result<std::vector<ManualPage>> manualPages(const std::string& folder);

/// All pages as one HTML file that needs no other, with a list of contents. Pictures are those in `folder`/pictures
/// that are there; a page does without the others.
[[nodiscard]] std::string manualHtml(const std::vector<ManualPage>& pages, const std::string& folder);

} // namespace flowhand
