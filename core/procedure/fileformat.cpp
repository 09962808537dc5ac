#include "procedure/fileformat.h"

#include <algorithm>
#include <string>

namespace flowhand {

namespace {

constexpr std::size_t kLongestName = 64;

} // namespace

void readFormat(TomlReader& reader) {
    const std::optional<std::int64_t> format = reader.integer("format");
    const std::string known = std::to_string(kFileFormat);
    if (!format) {
        if (reader.node("format") == nullptr)
            reader.problems().error("missing-key", "the file must say 'format = " + known + "' at its start",
                                    reader.tableNode().place);
        return;
    }
    if (*format > kFileFormat)
        reader.problems().error("newer-format",
                                "this file has format " + std::to_string(*format) + ", this program reads format " +
                                    known + "; update the program",
                                reader.placeOf("format"));
    else if (*format < kFileFormat)
        reader.problems().error("bad-format",
                                "there is no format " + std::to_string(*format) + "; write 'format = " + known + "'",
                                reader.placeOf("format"));
}

bool isPlainName(std::string_view name) {
    const auto isLetter = [](char c) {
        return c >= 'a' && c <= 'z';
    };
    return !name.empty() && name.size() <= kLongestName && isLetter(name.front()) &&
           std::all_of(name.begin(), name.end(), [&](char c) {
               return isLetter(c) || (c >= '0' && c <= '9') || c == '_';
           });
}

} // namespace flowhand
