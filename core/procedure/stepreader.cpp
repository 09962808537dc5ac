#include "procedure/stepreader.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/names.h"
#include "condition/program.h"
#include "procedure/replybutton.h"

namespace flowhand {

namespace {

/// The on-time limit of a step that says none: what a person needs to hear a cue, find a control and move it, with
/// room to spare. Our own choice.
constexpr Duration kUsualWithin = std::chrono::seconds(5);
/// No step is waited for longer.
constexpr Duration kLongestWithin = std::chrono::hours(1);
/// `late` unless said, as a multiple of `within`.
constexpr double kLateFactor = 2.5;

template <class T, std::size_t N>
T choice(TomlReader& reader, std::string_view key, const std::array<std::pair<std::string_view, T>, N>& names) {
    const std::optional<std::string> text = reader.text(key);
    if (!text)
        return names.front().second;
    std::vector<std::string> known;
    for (const auto& [name, value] : names) {
        if (name == *text)
            return value;
        known.emplace_back(name);
    }
    reader.problems().error("unknown-word",
                            "'" + std::string(key) + "' cannot be '" + *text + "'; it is one of " +
                                joined(known, ", ") + nearestHint(*text, known),
                            reader.placeOf(key));
    return names.front().second;
}

constexpr std::array<std::pair<std::string_view, StepKind>, 4> kKinds{
    {{"act", StepKind::Act}, {"reply", StepKind::Reply}, {"check", StepKind::Check}, {"say", StepKind::Say}}};
constexpr std::array<std::pair<std::string_view, Duty>, 2> kDuties{
    {{"flying", Duty::Flying}, {"monitoring", Duty::Monitoring}}};

void addOnce(std::vector<SignalId>& all, SignalId id) {
    if (std::find(all.begin(), all.end(), id) == all.end())
        all.push_back(id);
}

class StepReader {
public:
    StepReader(FlowContext& context, TomlReader& reader, Step& step)
        : m_context(context), m_reader(reader), m_step(step) {}

    void read(const std::string& seat) {
        m_step.place = m_reader.tableNode().place;
        m_step.title = m_reader.requiredText("title");
        m_step.kind = choice(m_reader, "kind", kKinds);
        m_step.duty = choice(m_reader, "duty", kDuties);
        readSeats(seat);
        readWords();
        m_step.when = m_context.condition(m_reader, "when");
        m_step.suspend = m_context.condition(m_reader, "suspend");
        refuseInstant(m_step.suspend, "suspend");
        readDone();
        readExpires();
        readControls();
        readTimes();
        m_step.weight = m_context.weight(m_reader);
        readBand();
        warnOfWindows();
        warnOfBand();
        m_step.compareOnly = m_reader.boolean("compare_only").value_or(m_step.kind == StepKind::Check);
        readNeeds();
        m_step.jumpPlace = m_reader.text("place").value_or("");
        m_step.jumpWhere = m_reader.placeOf("place");
        m_step.why = m_reader.text("why").value_or("");
    }

private:
    void error(const char* code, const std::string& message, std::string_view key) {
        m_context.problems().error(code, "step '" + m_step.id + "' " + message, m_reader.placeOf(key));
    }

    void readSeats(const std::string& seat) {
        m_step.seat = m_context.seat(m_reader, "seat", seat);
        if (m_step.seat.empty() && m_reader.node("seat") == nullptr)
            error("missing-key", "needs 'seat', or the file a 'seat' for all its steps", "seat");
        m_step.orderedBy = m_context.seat(m_reader, "ordered_by", "");
        m_step.movedBy = m_context.seat(m_reader, "moved_by", m_step.seat);
    }

    void readWords() {
        m_step.reply = m_reader.text("reply").value_or("");
        const TomlNode* table = m_reader.table("cue");
        if (table == nullptr) {
            if (m_step.kind == StepKind::Say && m_reader.node("cue") == nullptr)
                error("missing-key", "is of kind \"say\" and needs its words: cue = { by = \"...\", text = \"...\" }",
                      "cue");
            return;
        }
        TomlReader cue(m_context.file(), *table, "the cue of step '" + m_step.id + "'", m_context.problems());
        Words words{cue.requiredText("text"), cue.requiredText("by")};
        std::vector<std::string> speakers = m_context.aircraft().seats;
        speakers.insert(speakers.end(), {"cockpit", "ground"});
        if (!words.by.empty() && std::find(speakers.begin(), speakers.end(), words.by) == speakers.end())
            m_context.problems().error("unknown-speaker",
                                       "nobody called '" + words.by + "' speaks; words are by " +
                                           joined(speakers, ", ") + nearestHint(words.by, speakers),
                                       cue.placeOf("by"));
        cue.finish();
        m_step.cue = std::move(words);
    }

    void readDone() {
        const bool isWritten = m_reader.node("done") != nullptr;
        if (m_step.kind == StepKind::Say) {
            if (isWritten)
                error("say-with-done", "is of kind \"say\": it is done when its words end; leave 'done' out", "done");
            return;
        }
        const Aircraft& aircraft = m_context.aircraft();
        const std::optional<SignalId> button = replyButton(aircraft);
        if (m_step.kind == StepKind::Reply && !isWritten && button) {
            m_step.done = m_context.compile("rise(" + aircraft.signals[*button].name + ")", m_step.place);
            return;
        }
        m_step.done = m_context.condition(m_reader, "done");
        if (!isWritten)
            error("missing-key", "needs 'done', the condition that says it is done", "done");
    }

    void readExpires() {
        const std::optional<std::string> text = m_reader.text("expires");
        if (!text)
            return;
        if (const Result<Duration> time = parseDuration(*text); time)
            m_step.expiresAfter = *time;
        else
            m_step.expires = m_context.compile(*m_reader.node("expires"));
    }

    void refuseInstant(const std::optional<PlacedCondition>& condition, std::string_view key) {
        if (condition && condition->condition.isInstant())
            error("instant-stretch", "has a '" + std::string(key) + "' that is true at single instants only", key);
    }

    void readControls() {
        for (const std::string& name : m_reader.texts("controls"))
            if (const std::optional<SignalId> id = m_context.control(name, m_reader.placeOf("controls")))
                addOnce(m_step.controls, *id);
        if (m_reader.node("controls") == nullptr && m_step.done)
            for (const SignalId id : m_step.done->condition.signals())
                if (m_context.aircraft().isControl(id))
                    m_step.controls.push_back(id);
        const bool needsHand = m_step.kind == StepKind::Act || m_step.kind == StepKind::Reply;
        if (needsHand && m_step.done && m_step.controls.empty())
            error("no-control",
                  "names no control in 'done', so no hand could do it; name the hand's in 'controls', or make it "
                  "kind = \"check\"",
                  "done");
        for (const SignalId id : m_step.controls)
            checkReach(id);
    }

    void checkReach(SignalId id) {
        const std::vector<std::string>& seats = m_context.aircraft().control(id).seats;
        if (m_step.kind != StepKind::Act || seats.empty() ||
            std::find(seats.begin(), seats.end(), m_step.movedBy) != seats.end())
            return;
        error("out-of-reach",
              "is moved by " + m_step.movedBy + ", who cannot reach " + m_context.aircraft().signals[id].name +
                  "; it is at the seat of " + joined(seats, ", "),
              "moved_by");
    }

    void readTimes() {
        m_step.within = m_reader.duration("within").value_or(kUsualWithin);
        if (m_step.within <= Duration::zero() || m_step.within > kLongestWithin) {
            error("bad-time", "must have a 'within' above 0 s and at most 1 h", "within");
            m_step.within = kUsualWithin;
        }
        m_step.late = m_reader.duration("late").value_or(fromSeconds(kLateFactor * seconds(m_step.within)));
        if (m_step.late <= m_step.within)
            error("bad-time", "must have a 'late' above its 'within'", "late");
    }

    void readBand() {
        const TomlNode* table = m_reader.table("band");
        if (table == nullptr)
            return;
        TomlReader band(m_context.file(), *table, "the band of step '" + m_step.id + "'", m_context.problems());
        const std::string name = band.requiredText("signal");
        const std::optional<SignalId> id = name.empty() ? std::nullopt : m_context.signal(name, band.placeOf("signal"));
        const std::optional<double> lowest = bandEnd(band, "from", id);
        const std::optional<double> highest = bandEnd(band, "to", id);
        band.finish();
        if (!id || !lowest || !highest)
            return;
        if (*lowest >= *highest)
            error("bad-range", "has a band whose 'from' is not below its 'to'", "band");
        m_step.band = Band{*id, *lowest, *highest};
    }

    void warning(const char* code, const std::string& message, SourcePlace place) {
        m_context.problems().warning(code, "step '" + m_step.id + "' " + message, std::move(place));
    }

    /// The step's limit counts from when it is due, and so does `held`; other windows reach back before that.
    void warnOfWindows() {
        const TomlNode* text = m_reader.node("done");
        if (!m_step.done || text == nullptr || m_step.done->condition.longestWindow().length <= m_step.within)
            return;
        const ConditionWindow& window = m_step.done->condition.longestWindow();
        warning(
            "window-beyond-limit",
            window.isHeld
                ? "wants something held for longer than its 'within', so it can only be late; make 'within' longer"
                : "looks back over a longer time than its 'within', so what was long before it counts too; make the "
                  "window shorter or 'within' longer",
            m_context.file().placeInText(*text, window.offset));
    }

    void warnOfBand() {
        if (!m_step.band)
            return;
        const Band& band = *m_step.band;
        const Signal& signal = m_context.aircraft().signals[band.signal];
        const bool hasRange = signal.lowest < signal.highest;
        const double middle = (band.lowest + band.highest) / 2.0;
        const auto text = [&](double number) {
            return valueText(signal, Value::number(number));
        };
        if (hasRange && (middle < signal.lowest || middle > signal.highest))
            warning("unreachable-band",
                    "has a band whose middle, " + text(middle) + ", is never reached: " + signal.name + " goes from " +
                        text(signal.lowest) + " to " + text(signal.highest),
                    m_reader.placeOf("band"));
        else if (m_step.done && !mayBeInside(band))
            warning("unreachable-band",
                    "is never done inside its band: 'done' is not true for any " + signal.name + " from " +
                        text(band.lowest) + " to " + text(band.highest),
                    m_reader.placeOf("band"));
    }

    /// Whether `done` allows any value in the band: those at and beside the constants it is compared with are tried.
    bool mayBeInside(const Band& band) const {
        const Condition& done = m_step.done->condition;
        std::vector<double> places{band.lowest, band.highest};
        for (const Comparison& comparison : done.program().comparisons)
            if (comparison.isThreshold && comparison.signal == band.signal && comparison.constant > band.lowest &&
                comparison.constant < band.highest)
                places.push_back(comparison.constant);
        std::sort(places.begin(), places.end());
        for (std::size_t i = places.size() - 1; i > 0; --i)
            places.push_back((places[i - 1] + places[i]) / 2.0);
        const std::vector<Value> others(m_context.aircraft().signals.size());
        return std::any_of(places.begin(), places.end(), [&](double place) {
            return done.fits(band.signal, Value::number(place), others);
        });
    }

    std::optional<double> bandEnd(TomlReader& band, std::string_view key, std::optional<SignalId> id) {
        (void)band.requiredText(key);
        const TomlNode* node = band.node(key);
        if (!id || node == nullptr)
            return std::nullopt;
        const Signal& signal = m_context.aircraft().signals[*id];
        if (signal.kind != SignalKind::Number) {
            error("bad-band", "has a band of " + signal.name + ", which is no number", "band");
            return std::nullopt;
        }
        const std::optional<Value> value = m_context.value(signal, *node);
        return value ? std::optional(value->number()) : std::nullopt;
    }

    void readNeeds() {
        for (const std::string& name : m_reader.texts("needs"))
            if (const std::optional<SignalId> id = m_context.signal(name, m_reader.placeOf("needs")))
                addOnce(m_step.needs, *id);
        for (const std::optional<PlacedCondition>* condition : {&m_step.when, &m_step.done})
            if (*condition)
                for (const SignalId id : (*condition)->condition.signals())
                    if (!m_context.aircraft().isControl(id))
                        addOnce(m_step.needs, id);
    }

    FlowContext& m_context;
    TomlReader& m_reader;
    Step& m_step;
};

} // namespace

Step readStep(FlowContext& context, TomlReader& reader, const std::string& seat) {
    Step step;
    step.id = reader.requiredText("id");
    StepReader(context, reader, step).read(seat);
    return step;
}

} // namespace flowhand
