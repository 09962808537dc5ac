// The ways of wiring that a builder asks for by name: what has to be known beyond which input moves.
//
//   #   asked for             stages (wiringwish.cpp)            from them
//   1   split_axis            idle, far end of each              both ranges, the split below idle
//   2   switched_axis         low, high, switch over             the range, the switch
//   3   twist                 both ends, two other movements     dead bands, what is felt
//   4   difference, max,      each axis pressed by itself        both ranges
//       split
//   5   zones                 each zone in turn                  which contacts are closed in it
//   6   encoder               four clicks to the high side       the order of its contacts, changes a click
//   7   step_buttons          more, less                         which button is which
//   8   relative_wheel        turned to the high side            the wheel, and its sign
//   9   parking_latch         the pedals, the pull               the ranges, the contact
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <set>

#include "base/names.h"
#include "bench/splitpoint.h"
#include "bench/wiringparts.h"

namespace flowhand {

namespace {

constexpr int kClicksAsked = 4;
/// Another movement of a stick is felt from this share of its way on (our own choice).
constexpr double kFeltFrom = 0.15;

class SpecialSolver {
public:
    SpecialSolver(const WiringWish& wish, const Aircraft& aircraft, const InputWatch& watch,
                  const std::vector<StageResult>& stages, const InputNamer& nameOf)
        : m_wish(wish), m_watch(watch), m_stages(stages), m_nameOf(nameOf),
          m_signal(aircraft.signals[wish.signals.front()]) {}

    BenchResult<WiringProposal> solve() {
        switch (m_wish.way) {
        case WiringWay::SplitAxis:
            return splitAxis();
        case WiringWay::SwitchedAxis:
            return switchedAxis();
        case WiringWay::Twist:
            return twist();
        case WiringWay::Difference:
            return twoAxes("difference");
        case WiringWay::Max:
            return twoAxes("max");
        case WiringWay::Split:
            return twoAxes("split");
        case WiringWay::Zones:
            return zones();
        case WiringWay::Encoder:
            return encoder();
        case WiringWay::StepButtons:
            return stepButtons();
        case WiringWay::RelativeWheel:
            return relativeWheel();
        case WiringWay::ParkingLatch:
            return parkingLatch();
        case WiringWay::Found:
            break;
        }
        return failure("unknown-wiring", "nothing was asked for");
    }

private:
    /// The axis that moved most, against its noise, between two stages; those in `taken` are not looked at.
    std::optional<FoundInput> axisBetween(std::size_t from, std::size_t to, const std::set<InputPlace>& taken = {}) {
        for (const FoundInput& found : movedAxes(m_watch, {m_stages[from], m_stages[to]}))
            if (taken.count(found.place) == 0)
                return found;
        return std::nullopt;
    }

    /// The one contact that closed or opened between two stages.
    std::optional<ContactStates> contactBetween(std::size_t from, std::size_t to) {
        const std::vector<ContactStates> moved = movedContacts(m_watch, {m_stages[from], m_stages[to]});
        return moved.size() == 1 ? std::optional(moved.front()) : std::nullopt;
    }

    [[nodiscard]] std::int64_t at(std::size_t stage, InputPlace place) const { return rawAt(m_stages, stage, place); }
    [[nodiscard]] std::string name(InputPlace place) const { return quoted(m_nameOf(place)); }
    [[nodiscard]] static std::string pairText(std::int64_t a, std::int64_t b) {
        return "[" + std::to_string(a) + ", " + std::to_string(b) + "]";
    }
    [[nodiscard]] static tl::unexpected<BenchError> notFitting(Phrase words) {
        return benchFailure("not-fitting", std::move(words));
    }
    [[nodiscard]] tl::unexpected<BenchError> nothing(const Phrase& what) const {
        return benchFailure("nothing-moved",
                            phrase("no {1} of {2} moved; is it connected, and was each place held for a second?")
                                .with(what, m_signal.label));
    }

    BenchResult<WiringProposal> splitAxis() {
        const std::optional<FoundInput> axis = axisBetween(0, 1);
        if (!axis)
            return nothing(phrase("axis"));
        const std::int64_t idle = at(0, axis->place);
        const std::int64_t first = at(1, axis->place);
        const std::int64_t second = at(2, axis->place);
        if ((first - idle) * (second - idle) >= 0)
            return notFitting(
                phrase("idle ({1}) does not lie between the two ends ({2}, {3}) of {4}; start with the lever at idle")
                    .with(std::to_string(idle), std::to_string(first), std::to_string(second), m_nameOf(axis->place)));
        const std::optional<SplitPoint> split = splitPointOf(idle, first, second, axis->sigma, 0.0);
        if (!split)
            return notFitting(
                phrase("the way from idle to the far end of the second one is too short to tell from idle"));
        WiringProposal proposal{"split_axis", {axis->place}, {}, {}};
        proposal.keys = "input = " + name(axis->place) + "\n";
        for (const RigKey& key : split->keys())
            proposal.keys += key.key + " = " + key.value + "\n";
        proposal.keys += noiseLine(axis->sigma);
        return proposal;
    }

    BenchResult<WiringProposal> switchedAxis() {
        const std::optional<FoundInput> axis = axisBetween(0, 1);
        const std::optional<ContactStates> contact = contactBetween(2, 3);
        if (!axis)
            return nothing(phrase("axis"));
        if (!contact)
            return nothing(phrase("single contact for the switch"));
        const std::string range = pairText(at(0, axis->place), at(1, axis->place));
        WiringProposal proposal{"switched_axis", {axis->place, contact->place}, {}, {}};
        proposal.keys = "input = " + name(axis->place) + "\nranges = [" + range + ", " + range +
                        "]\nswitch = " + name(contact->place) + "\n" +
                        (contact->isClosed(0) ? "normally_closed = true\n" : "") + noiseLine(axis->sigma);
        return proposal;
    }

    /// Dead bands reach as far as it was seen to come, and half as much again where other movements are felt.
    BenchResult<WiringProposal> twist() {
        const std::optional<FoundInput> axis = axisBetween(1, 2);
        if (!axis)
            return nothing(phrase("axis"));
        const std::int64_t centre = at(0, axis->place);
        const std::int64_t from = at(1, axis->place);
        const std::int64_t to = at(2, axis->place);
        if ((centre - from) * (to - centre) <= 0)
            return notFitting(phrase("{1} does not rest between its two ends").with(m_nameOf(axis->place)));
        std::int64_t back = 0;
        for (const std::size_t stage : {3, 5, 7})
            back = std::max<std::int64_t>(back, std::llabs(at(stage, axis->place) - centre));
        std::int64_t felt = 0;
        WiringProposal proposal{"axis", {axis->place}, {}, {}};
        std::vector<std::string> others;
        for (const std::size_t stage : {4, 6}) {
            const std::optional<FoundInput> other = axisBetween(stage - 1, stage, {axis->place});
            if (!other)
                return nothing(phrase("other axis of the stick"));
            felt = std::max<std::int64_t>(felt, std::llabs(at(stage, axis->place) - centre));
            const std::int64_t rest = at(0, other->place);
            const auto beyond =
                std::max(6 * other->sigma, kFeltFrom * std::fabs(double(at(stage, other->place) - rest)));
            if (std::find(proposal.inputs.begin(), proposal.inputs.end(), other->place) == proposal.inputs.end()) {
                proposal.inputs.push_back(other->place);
                others.push_back("{ input = " + name(other->place) + ", centre = " + std::to_string(rest) +
                                 ", beyond = " + std::to_string(std::llround(beyond)) + " }");
            }
        }
        const auto wide = [&](double counts) {
            return static_cast<std::int64_t>(std::ceil(counts + 3 * axis->sigma));
        };
        const std::int64_t deadBand = wide(double(back));
        const std::int64_t feltBand = wide(1.5 * double(felt));
        if (2 * feltBand >= std::min(std::llabs(centre - from), std::llabs(to - centre)))
            return notFitting(
                phrase("the stick's other movements twist it by half of its way; was it not twisted by hand?"));
        proposal.keys = "input = " + name(axis->place) + "\n" + rangeLine(from, to) +
                        "centre = " + std::to_string(centre) + "\ndead_band = " + std::to_string(deadBand) + "\n";
        if (feltBand > deadBand)
            proposal.keys +=
                "crosstalk_dead_band = " + std::to_string(feltBand) + "\ncrosstalk = [" + joined(others, ", ") + "]\n";
        else
            proposal.remarks.push_back(phrase("the stick's other movements are not felt"));
        proposal.keys += noiseLine(axis->sigma);
        return proposal;
    }

    BenchResult<WiringProposal> twoAxes(const std::string& combine) {
        const std::optional<FoundInput> first = axisBetween(0, 1);
        if (!first)
            return nothing(phrase("first axis"));
        const std::optional<FoundInput> second = axisBetween(2, 3, {first->place});
        if (!second)
            return nothing(phrase("second axis"));
        WiringProposal proposal{"two_axes", {first->place, second->place}, {}, {}};
        proposal.keys = "combine = " + quoted(combine) + "\ninput = [" + name(first->place) + ", " +
                        name(second->place) + "]\nranges = [" + pairText(at(0, first->place), at(1, first->place)) +
                        ", " + pairText(at(2, second->place), at(3, second->place)) + "]\n" +
                        noiseLine(std::max(first->sigma, second->sigma));
        return proposal;
    }

    BenchResult<WiringProposal> zones() {
        const std::vector<ContactStates> contacts = movedContacts(m_watch, m_stages);
        if (contacts.empty())
            return nothing(phrase("contact"));
        WiringProposal proposal{"zones", {}, {}, {}};
        std::vector<std::string> names;
        for (const ContactStates& contact : contacts) {
            proposal.inputs.push_back(contact.place);
            names.push_back(name(contact.place));
        }
        proposal.keys = "input = [" + joined(names, ", ") + "]\nzones = [\n";
        std::set<std::vector<bool>> seen;
        for (std::size_t i = 0; i < m_wish.zones.size(); ++i) {
            std::vector<bool> states;
            std::vector<std::string> closed;
            for (std::size_t contact = 0; contact < contacts.size(); ++contact) {
                states.push_back(contacts[contact].isClosed(i));
                if (contacts[contact].isClosed(i))
                    closed.push_back(names[contact]);
            }
            if (!seen.insert(states).second)
                return notFitting(phrase("two zones have the same contacts closed ({1}); hold each for a second")
                                      .with(joined(closed, ", ")));
            proposal.keys += "    { closed = [" + joined(closed, ", ") +
                             "], value = " + quoted(valueText(m_signal, m_wish.zones[i])) + " },\n";
        }
        proposal.keys += "]\n";
        return proposal;
    }

    /// Quarter periods to the high side with `first` written before `second`, as encoders are counted: 00, 01, 11, 10.
    [[nodiscard]] int quartersOf(InputPlace first, InputPlace second) const {
        constexpr std::array<int, 4> kPlace = {0, 1, 3, 2}; // of the code in the turn
        const auto closedAt = [&](InputPlace place) {
            const auto standing = m_stages[0].standing.find(place);
            return standing != m_stages[0].standing.end() &&
                   std::llround(standing->second.raw) != m_watch.info(place).lowest;
        };
        std::size_t code = (closedAt(first) ? 2u : 0u) | (closedAt(second) ? 1u : 0u);
        int quarters = 0;
        for (const InputEvent& event : m_stages[1].events) {
            if (event.place != first && event.place != second)
                continue;
            const std::size_t bit = event.place == first ? 2u : 1u;
            const bool isClosed = event.raw != m_watch.info(event.place).lowest;
            const std::size_t now = isClosed ? code | bit : code & ~bit;
            if (now != code)
                quarters += (kPlace[now] - kPlace[code] + 4) % 4 == 1 ? 1 : -1;
            code = now;
        }
        return quarters;
    }

    BenchResult<WiringProposal> encoder() {
        std::set<InputPlace> turned;
        for (const InputEvent& event : m_stages[1].events)
            if (m_watch.info(event.place).kind == InputKind::Button)
                turned.insert(event.place);
        if (turned.size() != 2)
            return notFitting(phrase("{1} contacts changed; an encoder has two. One whose card counts is a "
                                     "relative_wheel, one whose card presses buttons is step_buttons")
                                  .with(std::to_string(turned.size())));
        InputPlace first = *turned.begin();
        InputPlace second = *turned.rbegin();
        int quarters = quartersOf(first, second);
        if (quarters < 0) {
            std::swap(first, second);
            quarters = quartersOf(first, second);
        }
        const int perClick = quarters / kClicksAsked;
        if (quarters % kClicksAsked != 0 || (perClick != 1 && perClick != 2 && perClick != 4))
            return notFitting(phrase("four clicks made {1} changes; an encoder makes 4, 8 or 16. Was it turned by just "
                                     "four clicks, one way?")
                                  .with(std::to_string(quarters)));
        WiringProposal proposal{"encoder", {first, second}, {}, {}};
        proposal.keys = "input = [" + name(first) + ", " + name(second) + "]\n" + start() + perStep("per_detent") +
                        "transitions = " + std::to_string(perClick) + "\n";
        return proposal;
    }

    BenchResult<WiringProposal> stepButtons() {
        const std::optional<ContactStates> more = contactBetween(0, 1);
        const std::optional<ContactStates> less = contactBetween(2, 3);
        if (!more || !less)
            return nothing(more ? phrase("single button for less") : phrase("single button for more"));
        if (more->place == less->place)
            return notFitting(phrase("the same button was pressed both times"));
        WiringProposal proposal{"step_buttons", {less->place, more->place}, {}, {}};
        proposal.keys =
            "less = " + name(less->place) + "\nmore = " + name(more->place) + "\n" + start() + perStep("per_press");
        return proposal;
    }

    BenchResult<WiringProposal> relativeWheel() {
        const std::vector<InputPlace> wheels = movedWheels(m_watch, m_stages);
        // A wheel that speaks for the first time when it is turned has only that one standing.
        std::set<InputPlace> turned(wheels.begin(), wheels.end());
        for (const InputEvent& event : m_stages[1].events)
            if (m_watch.info(event.place).kind == InputKind::Relative && event.raw != 0)
                turned.insert(event.place);
        if (turned.size() != 1)
            return nothing(turned.empty() ? phrase("wheel that counts") : phrase("single wheel"));
        const InputPlace wheel = *turned.begin();
        const auto before = m_stages[0].standing.find(wheel);
        const double from = before == m_stages[0].standing.end() ? 0.0 : before->second.raw;
        const bool isForward = m_stages[1].standing.at(wheel).raw > from;
        WiringProposal proposal{"relative_wheel", {wheel}, {}, {}};
        proposal.keys = "input = " + name(wheel) + "\n" + start();
        if (m_signal.kind == SignalKind::Number)
            proposal.keys += "per_count = " + quoted((isForward ? "" : "-") + m_wish.step) + "\n";
        return proposal;
    }

    /// One pedal, or the two that moved most, in the order in which their device has them.
    BenchResult<WiringProposal> parkingLatch() {
        const std::vector<FoundInput> moved = movedAxes(m_watch, {m_stages[0], m_stages[1]});
        const std::optional<ContactStates> pull = contactBetween(2, 3);
        if (moved.empty())
            return nothing(phrase("pedal"));
        if (!pull)
            return nothing(phrase("single contact for the pull"));
        std::set<InputPlace> pedals;
        for (std::size_t i = 0; i < std::min<std::size_t>(moved.size(), 2); ++i)
            pedals.insert(moved[i].place);
        WiringProposal proposal{"parking_latch", {pedals.begin(), pedals.end()}, {}, {}};
        proposal.inputs.push_back(pull->place);
        std::vector<std::string> names, ranges;
        for (const InputPlace pedal : pedals) {
            names.push_back(name(pedal));
            ranges.push_back(pairText(at(0, pedal), at(1, pedal)));
        }
        proposal.keys = "pedals = [" + joined(names, ", ") + "]\nranges = [" + joined(ranges, ", ") +
                        "]\npull = " + name(pull->place) + "\nstart = \"off\"\n";
        if (pedals.size() == 1)
            proposal.remarks.push_back(phrase("only one pedal moved; it sets the brake alone"));
        return proposal;
    }

    /// Where a control that is counted stands at first: 0 where there is one.
    [[nodiscard]] std::string start() const {
        if (m_signal.kind != SignalKind::Number)
            return "start = " +
                   quoted(m_signal.kind == SignalKind::OnOff ? std::string("off") : m_signal.positions.front()) + "\n";
        const double zero = m_signal.lowest <= 0 && m_signal.highest >= 0 ? 0.0 : m_signal.lowest;
        return "start = " + quoted(valueText(m_signal, Value::number(zero))) + "\n";
    }
    [[nodiscard]] std::string perStep(const std::string& key) const {
        return m_signal.kind == SignalKind::Number ? key + " = " + quoted(m_wish.step) + "\n" : std::string();
    }

    const WiringWish& m_wish;
    const InputWatch& m_watch;
    const std::vector<StageResult>& m_stages;
    const InputNamer& m_nameOf;
    const Signal& m_signal;
};

} // namespace

BenchResult<WiringProposal> solveSpecial(const WiringWish& wish, const Aircraft& aircraft, const InputWatch& watch,
                                         const std::vector<StageResult>& stages, const InputNamer& nameOf) {
    return SpecialSolver(wish, aircraft, watch, stages, nameOf).solve();
}

} // namespace flowhand
