#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "base/phrase.h"
#include "procedure/flow.h"
#include "session/anchor.h"

namespace flowhand {

enum class NoteKind : std::uint8_t {
    Note,      ///< words at a place of the run, anyone's
    Account,   ///< the pilot's own account of the run
    Objective, ///< what the run was flown for
    Ruling,    ///< the instructor's word on a finding, beside it: the score stays as it is. `choice`: kRulings
    Cause,     ///< of a finding, as the instructor sees it. `choice`: kCauses
    Practice,  ///< what is practised next, as agreed
    Mark       ///< of a phase. `choice`: "1" to "5", markWords()
};

/// Words kept beside a run. They change nothing of it.
struct Note {
    std::int64_t id = 0; ///< in the store; 0: not there yet
    std::int64_t writtenUnixMillis = 0;
    NoteKind kind = NoteKind::Note;
    std::string author; ///< a name; may be empty
    Anchor anchor;      ///< where in the run; of a finding: its step, or none where it is a guard's
    std::string guard;  ///< id, of a ruling or cause about a guard
    std::string phase;  ///< id, of a mark
    std::string choice;
    std::string text;

    bool operator==(const Note&) const = default;
};

/// "stands", "excused".
[[nodiscard]] const std::vector<std::string>& rulings();
/// "did not know", "forgot", "slipped", "was rushed".
[[nodiscard]] const std::vector<std::string>& causes();
/// What a mark of 1 to 5 means. The grades of the UK CAA's AMC4 ORO.FC.231(d)(1) ('VENN'), in our own words.
[[nodiscard]] Phrase markWords(int mark);
/// A ruling or a cause for a person.
[[nodiscard]] Phrase choiceWords(const std::string& choice);

[[nodiscard]] std::string_view nameOf(NoteKind kind);
[[nodiscard]] std::optional<NoteKind> findNoteKind(std::string_view name);

/// Whether the note may be written into a run of this flow that has `others` already. Errors `bad-note` (a step, guard,
/// phase or choice that is not there; no words where some are needed) and `account-first`: the pilot gives an account
/// before the instructor rules, names causes, marks or agrees what is next, so that it stays the pilot's own.
[[nodiscard]] Status checkNote(const Note& note, const Flow& flow, const std::vector<Note>& others);

/// The one that `note` takes the place of: that of its id; and there is one account, objective and next practice a run,
/// one ruling and cause a finding, one mark a phase. nullptr: none.
[[nodiscard]] const Note* replacedBy(const Note& note, const std::vector<Note>& others);

/// The phases of the flight that the flow lies in, first to last: those that can be marked.
[[nodiscard]] std::vector<std::string> phasesOf(const Flow& flow);

} // namespace flowhand
