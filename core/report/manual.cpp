#include "report/manual.h"

#include <algorithm>
#include <cstdint>
#include <filesystem>

#include "base/textfile.h"
#include "report/html.h"
#include "report/markdown.h"

namespace flowhand {

namespace fs = std::filesystem;

const char* const kManualCautions =
    "**Flowhand is a hobby trainer and is not for real-world flight training.** Its aircraft, airport and procedures "
    "are "
    "invented. Learn to fly from a licensed instructor. When you build: wire low voltage only, disconnect everything "
    "before you solder, and keep to your local electrical codes.";

namespace {

constexpr std::size_t kLargestPicture = 16u << 20;

constexpr const char* kManualStyle = R"(
body { font-size: 12pt; } h1 { margin-top: 12mm; break-before: page; } h2 { font-size: 14pt; } li { margin: 1mm 0; }
code, pre { font-family: "DejaVu Sans Mono", monospace; font-size: 10.5pt; } pre { background: #f4f4f4; padding: 2mm 3mm; }
td, th { font-size: 11pt; } img { max-width: 100%; height: auto; border: 0.2mm solid #999; }
nav li { list-style: none; } .cautions { border-top: 0.3mm solid #111; font-size: 10.5pt; }
)";

std::string base64(const std::string& bytes) {
    constexpr char kLetters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"; // RFC 4648
    std::string text;
    for (std::size_t at = 0; at < bytes.size(); at += 3) {
        std::uint32_t group = 0;
        const std::size_t count = std::min<std::size_t>(bytes.size() - at, 3);
        for (std::size_t i = 0; i < 3; ++i)
            group = group << 8 | (i < count ? static_cast<unsigned char>(bytes[at + i]) : 0u);
        for (std::size_t i = 0; i < 4; ++i)
            text += i <= count ? kLetters[group >> (18 - 6 * i) & 63u] : '=';
    }
    return text;
}

std::string titleOf(const std::string& text) {
    const std::size_t begin = text.rfind("# ", 0) == 0 ? 2 : 0;
    return text.substr(begin, text.find('\n') - begin);
}

/// "10_first_ten_minutes" without its number.
std::string idOf(const fs::path& file) {
    const std::string stem = file.stem().string();
    const std::size_t begin = stem.find_first_not_of("0123456789_");
    return begin == std::string::npos ? stem : stem.substr(begin);
}

} // namespace

Result<std::vector<ManualPage>> manualPages(const std::string& folder) {
    std::vector<fs::path> files;
    std::error_code failed;
    for (fs::directory_iterator at(folder, failed), end; !failed && at != end; at.increment(failed))
        if (at->path().extension() == ".md")
            files.push_back(at->path());
    std::sort(files.begin(), files.end());
    if (files.empty())
        return failure("no-manual", "the manual's pages are not there; install Flowhand again", {folder});
    std::vector<ManualPage> pages;
    for (const fs::path& file : files) {
        Result<std::string> text = readFile(file.string());
        if (!text)
            return tl::unexpected(text.error());
        ManualPage page;
        page.id = idOf(file);
        page.title = titleOf(*text);
        page.text = *text + "\n" + kManualCautions + "\n";
        pages.push_back(std::move(page));
    }
    return pages;
}

std::string manualHtml(const std::vector<ManualPage>& pages, const std::string& folder) {
    const auto picture = [&](const std::string& name) {
        const Result<std::string> bytes = readFile((fs::path(folder) / name).string(), kLargestPicture);
        return bytes ? "data:image/png;base64," + base64(*bytes) : std::string();
    };
    std::string contents, body;
    for (const ManualPage& page : pages) {
        contents += "<li><a href=\"#" + escaped(page.id) + "\">" + escaped(page.title) + "</a></li>\n";
        body += "<section id=\"" + escaped(page.id) + "\">\n" + markdownHtml(page.text, picture) + "</section>\n";
    }
    return std::string("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Flowhand, the "
                       "manual</title><meta name=\"viewport\" content=\"width=device-width\"><style>") +
           kPageStyle + kManualStyle + "</style></head><body>\n<h1>Flowhand</h1>\n<nav><ul>\n" + contents +
           "</ul></nav>\n" + body + "</body></html>\n";
}

} // namespace flowhand
