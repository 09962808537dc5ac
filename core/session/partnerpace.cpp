#include "session/partnerpace.h"

#include <algorithm>

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// A trained crew member hears, finds the control and moves it in about one to two seconds. Our own choice.
constexpr Duration kQuickest = 700ms;
constexpr Duration kSlowest = 1900ms;
/// Speech of about 160 words a minute, words of six letters with the gap. Our own choice.
constexpr Duration kBreath = 300ms;
constexpr Duration kLetter = 55ms;

/// SplitMix64 (G. Steele, D. Lea, C. Flood, Fast Splittable Pseudorandom Number Generators, OOPSLA 2014): integers
/// alone, unlike the distributions of the standard library, which differ between its makers.
std::uint64_t mixed(std::uint64_t state) {
    state += 0x9E3779B97F4A7C15U;
    state = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9U;
    state = (state ^ (state >> 27)) * 0x94D049BB133111EBU;
    return state ^ (state >> 31);
}

} // namespace

std::uint64_t PartnerPace::draw(std::size_t step, std::uint64_t what) const {
    return mixed(mixed(m_seed) ^ mixed(step * 4 + what));
}

Duration PartnerPace::delay(std::size_t step) const {
    // The mean of two even draws, in whole ticks: the middle is likelier than the ends.
    const auto ticks = static_cast<std::uint64_t>((kSlowest - kQuickest) / kTick);
    const std::uint64_t sum = draw(step, 0) % (ticks + 1) + draw(step, 1) % (ticks + 1);
    return kQuickest + static_cast<std::int64_t>(sum / 2) * kTick;
}

PartnerError PartnerPace::error(std::size_t step) const {
    const double chance = static_cast<double>(draw(step, 2) >> 11) / 9007199254740992.0; // 2^53
    if (chance >= m_errorRate)
        return PartnerError::None;
    return draw(step, 3) % 2 == 0 ? PartnerError::Late : PartnerError::WrongValue;
}

std::size_t letterCount(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char letter) {
        return (static_cast<unsigned char>(letter) & 0xC0U) != 0x80U;
    }));
}

Duration speakingTime(std::size_t letters) {
    return kBreath + static_cast<std::int64_t>(letters) * kLetter;
}

} // namespace flowhand
