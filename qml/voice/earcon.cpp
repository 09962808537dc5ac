#include "voice/earcon.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

struct Note {
    double hertz;
    double begin;  ///< s
    double length; ///< s
};

/// Far enough below full scale that two at once, or one over a voice, do not clip.
constexpr double kPeak = 0.4;
/// A tone that begins or ends more sharply than this is heard as a click.
constexpr double kEdge = 0.008; // s
/// Of the octave above, which makes a sine easier to place in a room.
constexpr double kOctave = 0.25;

std::vector<Note> notesOf(Earcon earcon) {
    switch (earcon) {
    case Earcon::Words:
        return {{587.3, 0.0, 0.18}};
    case Earcon::Done:
        return {{659.3, 0.0, 0.08}, {987.8, 0.07, 0.14}};
    case Earcon::Late:
        return {{659.3, 0.0, 0.08}, {659.3, 0.11, 0.14}};
    case Earcon::Wrong:
        return {{392.0, 0.0, 0.12}, {261.6, 0.11, 0.22}};
    case Earcon::Unsure:
        return {{523.3, 0.0, 0.09}, {554.4, 0.10, 0.16}};
    case Earcon::Guard:
        return {{880.0, 0.0, 0.08}, {440.0, 0.10, 0.10}, {880.0, 0.22, 0.08}, {440.0, 0.32, 0.12}};
    case Earcon::Click:
        return {{1568.0, 0.0, 0.11}};
    }
    return {};
}

/// 0..1: rises over kEdge, then dies away, and is silent again at the end.
double loudness(double at, double length) {
    const double rise = std::min(1.0, at / kEdge);
    const double fall = std::min(1.0, (length - at) / kEdge);
    return rise * fall * std::exp(-3.0 * at / length);
}

} // namespace

std::vector<float> earconSamples(Earcon earcon, int rate) {
    const std::vector<Note> notes = notesOf(earcon);
    double end = 0.0;
    for (const Note& note : notes)
        end = std::max(end, note.begin + note.length);
    std::vector<float> samples(static_cast<std::size_t>(std::ceil(end * rate)) + 1, 0.0F);
    for (const Note& note : notes) {
        const auto first = static_cast<std::size_t>(note.begin * rate);
        const auto count = static_cast<std::size_t>(note.length * rate);
        for (std::size_t i = 0; i < count; ++i) {
            const double at = static_cast<double>(i) / rate;
            const double turn = 2.0 * M_PI * note.hertz * at;
            const double tone = (std::sin(turn) + kOctave * std::sin(2.0 * turn)) / (1.0 + kOctave);
            samples[first + i] += static_cast<float>(kPeak * loudness(at, note.length) * tone);
        }
    }
    return samples;
}

} // namespace flowhand
