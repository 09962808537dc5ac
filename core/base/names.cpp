#include "base/names.h"

#include <algorithm>
#include <numeric>

namespace flowhand {

namespace {

/// Levenshtein distance: insertions, deletions and substitutions that turn a into b.
std::size_t editDistance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1)});
            diagonal = above;
        }
    }
    return row[b.size()];
}

/// Names longer than this are not compared: nobody mistypes them, and the distance costs length squared.
constexpr std::size_t kLongestName = 64;

} // namespace

std::string nearestHint(std::string_view name, const std::vector<std::string>& known) {
    const std::string* nearest = nullptr;
    std::size_t best = name.size() / 3 + 1;
    if (name.empty() || name.size() > kLongestName)
        return {};
    for (const std::string& candidate : known) {
        if (candidate.size() > kLongestName)
            continue;
        const std::size_t distance = editDistance(name, candidate);
        if (distance <= best && (nearest == nullptr || distance < best)) {
            best = distance;
            nearest = &candidate;
        }
    }
    return nearest == nullptr ? std::string() : "; did you mean '" + *nearest + "'?";
}

std::string joined(const std::vector<std::string>& words, std::string_view separator) {
    std::string text;
    for (const std::string& word : words)
        text.append(text.empty() ? "" : separator).append(word);
    return text;
}

} // namespace flowhand
