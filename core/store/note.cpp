#include "store/note.h"

#include <algorithm>
#include <array>

#include "base/names.h"
#include "procedure/phase.h"

namespace flowhand {

namespace {

constexpr std::array<std::string_view, 7> kKindNames = {"note",  "account",  "objective", "ruling",
                                                        "cause", "practice", "mark"};
static_assert(kKindNames.size() == static_cast<std::size_t>(NoteKind::Mark) + 1);

constexpr std::size_t kLongest = 10'000; // characters of a note

tl::unexpected<Error> refuse(std::string message) {
    return failure("bad-note", std::move(message));
}

Status checkChoice(const Note& note, const std::vector<std::string>& choices, const char* what) {
    if (std::find(choices.begin(), choices.end(), note.choice) != choices.end())
        return {};
    return refuse("'" + note.choice + "' is no " + what + "; write one of: " + joined(choices, ", "));
}

Status checkPlace(const Note& note, const Flow& flow) {
    std::vector<std::string> steps;
    for (const Step& step : flow.steps)
        steps.push_back(step.id);
    if (!note.anchor.step.empty() && std::find(steps.begin(), steps.end(), note.anchor.step) == steps.end())
        return refuse("the run's flow has no step '" + note.anchor.step + "'; its steps are " + joined(steps, ", ") +
                      nearestHint(note.anchor.step, steps));
    std::vector<std::string> guards;
    for (const Guard& guard : flow.guards)
        guards.push_back(guard.id);
    if (!note.guard.empty() && std::find(guards.begin(), guards.end(), note.guard) == guards.end())
        return refuse("the run's flow has no guard '" + note.guard + "'; its guards are " +
                      (guards.empty() ? "none" : joined(guards, ", ")));
    return {};
}

bool isOfFinding(NoteKind kind) {
    return kind == NoteKind::Ruling || kind == NoteKind::Cause;
}

bool isInstructors(NoteKind kind) {
    return isOfFinding(kind) || kind == NoteKind::Practice || kind == NoteKind::Mark;
}

Status checkKind(const Note& note, const Flow& flow) {
    if (isOfFinding(note.kind) && note.anchor.step.empty() && note.guard.empty())
        return refuse("say which finding it is about: its step or its guard");
    switch (note.kind) {
    case NoteKind::Ruling:
        if (note.text.empty())
            return refuse("a ruling needs its reason");
        return checkChoice(note, rulings(), "ruling");
    case NoteKind::Cause:
        return checkChoice(note, causes(), "cause");
    case NoteKind::Mark: {
        const std::vector<std::string> phases = phasesOf(flow);
        if (std::find(phases.begin(), phases.end(), note.phase) == phases.end())
            return refuse("the run's flow has no phase '" + note.phase + "'; it can be marked in " +
                          joined(phases, ", "));
        return checkChoice(note, {"1", "2", "3", "4", "5"}, "mark");
    }
    default:
        if (note.text.empty())
            return refuse("write some words");
        return {};
    }
}

} // namespace

const std::vector<std::string>& rulings() {
    static const std::vector<std::string> all = {"stands", "excused"};
    return all;
}

const std::vector<std::string>& causes() {
    static const std::vector<std::string> all = {"did not know", "forgot", "slipped", "was rushed"};
    return all;
}

// UK CAA, AMC4 ORO.FC.231(d)(1), the word pictures of its grading system, put in our own words: how safe and effective
// it was, and how much of what is looked for was shown how often.
Phrase markWords(int mark) {
    switch (mark) {
    case 1:
        return phrase("unsafe or without effect: few of the things looked for, and rarely");
    case 2:
        return phrase("not unsafe, just acceptable: some of the things looked for, now and then");
    case 3:
        return phrase("safe and adequate: many of the things looked for, regularly");
    case 4:
        return phrase("safe and effective: most of the things looked for, regularly");
    case 5:
        return phrase("an example to others, made it safer: nearly all of the things looked for, always");
    default:
        return {};
    }
}

Phrase choiceWords(const std::string& choice) {
    for (Phrase& words : std::array{phrase("stands"), phrase("excused"), phrase("did not know"), phrase("forgot"),
                                    phrase("slipped"), phrase("was rushed")})
        if (words.text() == choice)
            return std::move(words);
    return choice;
}

std::string_view nameOf(NoteKind kind) {
    return kKindNames[static_cast<std::size_t>(kind)];
}

std::optional<NoteKind> findNoteKind(std::string_view name) {
    for (std::size_t i = 0; i < kKindNames.size(); ++i)
        if (kKindNames[i] == name)
            return static_cast<NoteKind>(i);
    return std::nullopt;
}

Status checkNote(const Note& note, const Flow& flow, const std::vector<Note>& others) {
    if (note.text.size() > kLongest)
        return refuse("it is longer than " + std::to_string(kLongest) + " characters; split it");
    if (const Status place = checkPlace(note, flow); !place)
        return place;
    if (const Status kind = checkKind(note, flow); !kind)
        return kind;
    const bool hasAccount = std::any_of(others.begin(), others.end(), [](const Note& other) {
        return other.kind == NoteKind::Account;
    });
    if (isInstructors(note.kind) && !hasAccount)
        return failure("account-first",
                       "the pilot's own account comes first; write it, be it one sentence, and then the instructor's "
                       "words");
    return {};
}

const Note* replacedBy(const Note& note, const std::vector<Note>& others) {
    for (const Note& other : others)
        if (note.id != 0 && other.id == note.id)
            return &other;
    if (note.kind == NoteKind::Note)
        return nullptr;
    for (const Note& other : others)
        if (other.kind == note.kind && other.phase == note.phase &&
            (!isOfFinding(note.kind) || (other.anchor.step == note.anchor.step && other.guard == note.guard)))
            return &other;
    return nullptr;
}

std::vector<std::string> phasesOf(const Flow& flow) {
    std::vector<std::string> ids;
    const std::optional<std::size_t> from = findPhase(flow.phaseFrom);
    const std::optional<std::size_t> to = findPhase(flow.phaseTo.empty() ? flow.phaseFrom : flow.phaseTo);
    for (std::size_t i = from.value_or(1); to && i <= *to; ++i)
        ids.push_back(phases()[i].id);
    return ids;
}

} // namespace flowhand
