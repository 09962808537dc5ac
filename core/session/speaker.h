#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <string>

#include "base/time.h"

namespace flowhand {

/// What follows when words have been spoken.
enum class WordsPurpose : std::uint8_t { Cue, Reply, Remark };

inline constexpr auto kNoStep = static_cast<std::size_t>(-1);

struct Utterance {
    WordsPurpose purpose = WordsPurpose::Cue;
    std::size_t step = 0; ///< kNoStep: of none
    std::string by;
    std::string text;
};

/// One voice at a time: words wait until those before them have ended. The time they take is modelled, so that a run
/// does not depend on a sound card.
class Speaker {
public:
    /// True when they begin now; otherwise they wait.
    bool say(Utterance words) {
        m_queue.push_back(std::move(words));
        return m_queue.size() == 1;
    }
    [[nodiscard]] bool isSpeaking() const { return !m_queue.empty(); }
    /// Those being spoken; only when isSpeaking().
    [[nodiscard]] const Utterance& current() const { return m_queue.front(); }
    /// The words being spoken have ended; the next ones, if any, begin.
    Utterance finish() {
        Utterance words = std::move(m_queue.front());
        m_queue.pop_front();
        return words;
    }
    /// Takes back the cue of this step, if it is not being spoken yet.
    void dropCue(std::size_t step) {
        for (auto it = m_queue.begin(); it != m_queue.end();) {
            const bool isIt = it->purpose == WordsPurpose::Cue && it->step == step && it != m_queue.begin();
            it = isIt ? m_queue.erase(it) : it + 1;
        }
    }
    /// Takes back all words about this step, those being spoken too.
    void forget(std::size_t step) {
        std::erase_if(m_queue, [&](const Utterance& words) {
            return words.step == step;
        });
    }
    void clear() { m_queue.clear(); }

private:
    std::deque<Utterance> m_queue;
};

} // namespace flowhand
