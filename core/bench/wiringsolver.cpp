// From what the inputs did to how the control is wired. Of what moved in the stages:
//
//   #  the control is      what moved                                          wired as
//   1  a number            an axis                                             axis
//   2  a number            a wheel                                             relative_wheel (with its step)
//   3  a number            one contact                                         contact: its two ends
//   4  on/off              one contact, closed or open while on                contact
//   5  on/off              one contact, pulses each time                       toggle
//   6  on/off              two contacts, one pulses for on and one for off     set_clear
//   7  on/off              a hat, held in one direction                        contact: that direction
//   8  positions           contacts, one or none closed in each position       selector; of two, contact
//   9  positions           contacts, a number in Gray or binary code           coded_switch
//  10  positions           a hat                                               hat
//  11  positions           an axis that stands apart in each                   gates
//  12  anything            nothing, or what tells the states not apart         an error that says so
//
// What is asked for by name (split_axis, two axes, encoder ...) is solved in wiringspecial.cpp.
#include "bench/wiringsolver.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "base/names.h"
#include "bench/wiringparts.h"

namespace flowhand {

namespace {

/// Another axis that moved so much of the best one's score is named: crosstalk, or two levers at once.
constexpr double kAlsoMovedShare = 0.2;
/// Of an axis's range between its two ends: less is no lever.
constexpr double kLeastShare = 0.02;

class Solver {
public:
    Solver(const WiringWish& wish, const Aircraft& aircraft, const InputWatch& watch,
           const std::vector<StageResult>& stages, const InputNamer& nameOf)
        : m_wish(wish), m_aircraft(aircraft), m_watch(watch), m_stages(stages), m_nameOf(nameOf),
          m_signal(aircraft.signals[wish.signals.front()]), m_axes(movedAxes(watch, stages)),
          m_contacts(movedContacts(watch, stages)) {}

    BenchResult<WiringProposal> solve() {
        BenchResult<WiringProposal> proposal = m_signal.kind == SignalKind::Number  ? number()
                                               : m_signal.kind == SignalKind::OnOff ? onOff()
                                                                                    : positions();
        if (proposal)
            addRemarks(*proposal);
        return proposal;
    }

private:
    // --- numbers ---

    BenchResult<WiringProposal> number() {
        if (!m_axes.empty())
            return axis(m_axes.front());
        if (const std::vector<InputPlace> wheels = movedWheels(m_watch, m_stages); !wheels.empty())
            return benchFailure("not-fitting", phrase("a wheel that counts moved; say how much a count is: "
                                                      "{1}=relative_wheel:0.1 {2}")
                                                   .with(m_signal.name, m_signal.unit.symbol));
        if (m_contacts.size() != 1)
            return nothing(phrase("an axis"));
        const ContactStates& contact = m_contacts.front();
        WiringProposal proposal{"contact", {contact.place}, {}, {}};
        const double low = hasCentre(m_signal) ? 0.0 : m_signal.lowest;
        proposal.keys = inputLine(contact.place) +
                        valueLine("open", Value::number(contact.isClosed(0) ? m_signal.highest : low)) +
                        valueLine("closed", Value::number(contact.isClosed(0) ? low : m_signal.highest));
        return proposal;
    }

    BenchResult<WiringProposal> axis(const FoundInput& found) {
        const bool isCentred = hasCentre(m_signal);
        const std::size_t low = isCentred ? 1 : 0;
        const std::int64_t from = at(low, found.place);
        const std::int64_t to = at(low + 1, found.place);
        if (std::abs(static_cast<double>(to - from)) < kLeastShare * rangeOf(found.place))
            return benchFailure("not-fitting",
                                phrase("{1} moved, but stands at the same place ({2}) at both ends; hold "
                                       "each end for a second")
                                    .with(m_nameOf(found.place), std::to_string(from)));
        WiringProposal proposal{"axis", {found.place}, {}, {}};
        proposal.keys = inputLine(found.place) + rangeLine(from, to);
        if (isCentred) {
            const std::int64_t centre = at(0, found.place);
            if ((centre - from) * (to - centre) <= 0)
                return benchFailure(
                    "not-fitting",
                    phrase("{1} does not rest between its two ends ({2}, {3}, {4}); was it let go at its centre?")
                        .with(m_nameOf(found.place), std::to_string(from), std::to_string(centre), std::to_string(to)));
            proposal.keys += "centre = " + std::to_string(centre) + "\n";
        }
        proposal.keys += noiseLine(found.sigma);
        return proposal;
    }

    // --- on/off ---

    BenchResult<WiringProposal> onOff() {
        for (const ContactStates& contact : m_contacts) {
            if (contact.isClosed(0) == contact.isClosed(1) || contact.isClosed(2) != contact.isClosed(0))
                continue;
            WiringProposal proposal{"contact", {contact.place}, inputLine(contact.place), {}};
            if (contact.isClosed(0))
                proposal.keys += "normally_closed = true\n";
            if (m_aircraft.control(m_wish.signals.front()).kind == ControlKind::Button)
                proposal.keys += "momentary = true\n";
            if (m_contacts.size() > 1)
                proposal.remarks.push_back(
                    phrase("more than one contact moved; the first that follows the control was taken"));
            return proposal;
        }
        if (std::optional<WiringProposal> proposal = hatDirection())
            return std::move(*proposal);
        const std::vector<InputPlace> forOn = pulsesIn(m_watch, m_stages[1]);
        const std::vector<InputPlace> forOff = pulsesIn(m_watch, m_stages[2]);
        if (forOn.size() == 1 && forOff == forOn)
            return WiringProposal{"toggle", forOn, inputLine(forOn.front()) + "start = \"off\"\n", {}};
        if (forOn.size() == 1 && forOff.size() == 1)
            return WiringProposal{"set_clear",
                                  {forOn.front(), forOff.front()},
                                  "set = " + quoted(m_nameOf(forOn.front())) +
                                      "\nclear = " + quoted(m_nameOf(forOff.front())) + "\nstart = \"off\"\n",
                                  {}};
        if (!m_axes.empty())
            return benchFailure("not-fitting", phrase("only an axis moved ({1}); an on/off control needs a contact")
                                                   .with(m_nameOf(m_axes.front().place)));
        return nothing(phrase("a contact"));
    }

    /// A hat held in one of its four directions while on.
    std::optional<WiringProposal> hatDirection() {
        for (const InputPlace place : movedHats(m_watch, m_stages)) {
            const auto standing = m_stages[1].standing.find(place);
            if (standing == m_stages[1].standing.end())
                continue;
            const int eighth = hatEighth(m_watch.info(place), standing->second);
            if (eighth < 0 || eighth % 2 != 0)
                continue;
            WiringProposal proposal{"contact", {place}, {}, {}};
            proposal.keys = "input = " + quoted(m_nameOf(place) + " " + hatKey(eighth)) + "\nmomentary = true\n";
            return proposal;
        }
        return std::nullopt;
    }

    // --- positions ---

    BenchResult<WiringProposal> positions() {
        if (BenchResult<WiringProposal> proposal = byContacts())
            return proposal;
        for (const InputPlace place : movedHats(m_watch, m_stages))
            if (std::optional<WiringProposal> proposal = byHat(place))
                return std::move(*proposal);
        for (const FoundInput& axis : m_axes)
            if (std::optional<WiringProposal> proposal = gates(axis))
                return std::move(*proposal);
        if (m_axes.empty() && m_contacts.empty())
            return nothing(phrase("a switch, a hat or an axis"));
        return benchFailure("not-fitting",
                            phrase("what moved ({1}) does not tell all {2} positions of {3} apart; hold "
                                   "each for a second, in their order")
                                .with(movedNames(), std::to_string(m_signal.positions.size()), m_signal.label));
    }

    BenchResult<WiringProposal> byContacts() {
        const std::size_t count = m_signal.positions.size();
        std::vector<unsigned> codes(count, 0); // which of the contacts that moved are closed in each position
        if (m_contacts.empty() || m_contacts.size() > kMostCodeContacts)
            return failure("not-fitting", "no contacts");
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t contact = 0; contact < m_contacts.size(); ++contact)
                codes[i] |= m_contacts[contact].isClosed(i) ? 1u << contact : 0u;
        if (std::set<unsigned>(codes.begin(), codes.end()).size() != count)
            return failure("not-fitting", "not apart");
        if (count == 2 && m_contacts.size() == 1) {
            const bool isSecond = codes[1] != 0;
            return WiringProposal{"contact",
                                  {m_contacts[0].place},
                                  inputLine(m_contacts[0].place) + positionLine("open", isSecond ? 0 : 1) +
                                      positionLine("closed", isSecond ? 1 : 0),
                                  {}};
        }
        if (std::all_of(codes.begin(), codes.end(), [](unsigned code) {
                return (code & (code - 1)) == 0; // one or none
            }))
            return selector(codes);
        return codedSwitch(codes);
    }

    WiringProposal selector(const std::vector<unsigned>& codes) {
        WiringProposal proposal{"selector", {}, {}, {}};
        std::string contacts;
        for (std::size_t i = 0; i < codes.size(); ++i) {
            if (codes[i] == 0) {
                proposal.keys += positionLine("unwired", i);
                continue;
            }
            std::size_t contact = 0;
            while (codes[i] >> contact != 1)
                ++contact;
            proposal.inputs.push_back(m_contacts[contact].place);
            contacts += "    { input = " + quoted(m_nameOf(m_contacts[contact].place)) +
                        ", value = " + quoted(m_signal.positions[i]) + " },\n";
        }
        proposal.keys += "contacts = [\n" + contacts + "]\n";
        return proposal;
    }

    BenchResult<WiringProposal> codedSwitch(const std::vector<unsigned>& codes) {
        std::vector<std::size_t> order(m_contacts.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        do {
            std::vector<unsigned> numbers(codes.size(), 0);
            for (std::size_t i = 0; i < codes.size(); ++i)
                for (std::size_t bit = 0; bit < order.size(); ++bit)
                    numbers[i] |= (codes[i] >> order[bit] & 1u) << bit;
            for (const bool isGray : {true, false}) {
                const unsigned first = isGray ? fromGray(numbers[0]) : numbers[0];
                bool isFit = true;
                for (std::size_t i = 0; i < codes.size(); ++i)
                    isFit = isFit && (isGray ? fromGray(numbers[i]) : numbers[i]) == first + i;
                if (isFit)
                    return coded(order, isGray, first);
            }
        } while (std::next_permutation(order.begin(), order.end()));
        return failure("not-fitting", "no code");
    }

    WiringProposal coded(const std::vector<std::size_t>& order, bool isGray, unsigned first) {
        WiringProposal proposal{"coded_switch", {}, {}, {}};
        std::vector<std::string> names;
        std::vector<std::string> values;
        for (const std::size_t contact : order) {
            proposal.inputs.push_back(m_contacts[contact].place);
            names.push_back(quoted(m_nameOf(m_contacts[contact].place)));
        }
        for (const std::string& position : m_signal.positions)
            values.push_back(quoted(position));
        proposal.keys = "code = \"" + std::string(isGray ? "gray" : "binary") + "\"\ninput = [" + joined(names, ", ") +
                        "]\npositions = [" + joined(values, ", ") + "]\nfirst_code = " + std::to_string(first) + "\n";
        return proposal;
    }

    std::optional<WiringProposal> byHat(InputPlace place) {
        std::set<int> seen;
        WiringProposal proposal{"hat", {place}, inputLine(place), {}};
        for (std::size_t i = 0; i < m_signal.positions.size(); ++i) {
            const auto standing = m_stages[i].standing.find(place);
            if (standing == m_stages[i].standing.end())
                return std::nullopt;
            const int eighth = hatEighth(m_watch.info(place), standing->second);
            if (!seen.insert(eighth).second)
                return std::nullopt;
            proposal.keys += positionLine(hatKey(eighth), i);
        }
        return proposal;
    }

    std::optional<WiringProposal> gates(const FoundInput& axis) {
        const std::size_t count = m_signal.positions.size();
        std::vector<std::int64_t> raws;
        for (std::size_t i = 0; i < count; ++i)
            raws.push_back(at(i, axis.place));
        std::vector<std::int64_t> sorted = raws;
        std::sort(sorted.begin(), sorted.end());
        std::int64_t gap = sorted.back() - sorted.front();
        for (std::size_t i = 1; i < count; ++i)
            gap = std::min(gap, sorted[i] - sorted[i - 1]);
        // Half the way to the neighbour is the band, a tenth the hysteresis: the rest stays between, so that a lever
        // on its way is in no gate. Both must stand clear of the noise.
        const auto hysteresis = std::max<std::int64_t>(static_cast<std::int64_t>(std::ceil(6 * axis.sigma)), gap / 10);
        const std::int64_t band = gap / 4;
        if (count < 2 || band < 1 || 2 * (band + hysteresis) >= gap || static_cast<double>(band) < 6 * axis.sigma)
            return std::nullopt;
        WiringProposal proposal{"gates", {axis.place}, {}, {}};
        proposal.keys = inputLine(axis.place) + "band = " + std::to_string(band) +
                        "\nhysteresis = " + std::to_string(hysteresis) + "\n" + noiseLine(axis.sigma) + "gates = [\n";
        for (std::size_t i = 0; i < count; ++i)
            proposal.keys +=
                "    { position = " + quoted(m_signal.positions[i]) + ", at = " + std::to_string(raws[i]) + " },\n";
        proposal.keys += "]\n";
        return proposal;
    }

    // --- parts ---

    [[nodiscard]] std::int64_t at(std::size_t stage, InputPlace place) const { return rawAt(m_stages, stage, place); }
    [[nodiscard]] double rangeOf(InputPlace place) const {
        const InputInfo& info = m_watch.info(place);
        return static_cast<double>(info.highest - info.lowest);
    }
    [[nodiscard]] std::string inputLine(InputPlace place) const { return "input = " + quoted(m_nameOf(place)) + "\n"; }
    [[nodiscard]] std::string valueLine(const std::string& key, Value value) const {
        return key + " = " + quoted(valueText(m_signal, value)) + "\n";
    }
    [[nodiscard]] std::string positionLine(const std::string& key, std::size_t position) const {
        return key + " = " + quoted(m_signal.positions[position]) + "\n";
    }

    [[nodiscard]] std::string movedNames() const {
        std::vector<std::string> names;
        for (const FoundInput& axis : m_axes)
            names.push_back(m_nameOf(axis.place));
        for (const ContactStates& contact : m_contacts)
            names.push_back(m_nameOf(contact.place));
        return joined(names, ", ");
    }

    [[nodiscard]] tl::unexpected<BenchError> nothing(const Phrase& wanted) const {
        return benchFailure("nothing-moved",
                            m_contacts.empty() && m_axes.empty()
                                ? phrase("nothing moved and stood still again that could be {1}; is it connected, and "
                                         "was each place held for a second?")
                                      .with(m_signal.label)
                                : phrase("what moved ({1}) is not {2}, which {3} needs; is it connected, and was each "
                                         "place held for a second?")
                                      .with(movedNames(), wanted, m_signal.label));
    }

    void addRemarks(WiringProposal& proposal) const {
        for (const FoundInput& axis : m_axes) {
            const bool isUsed =
                std::find(proposal.inputs.begin(), proposal.inputs.end(), axis.place) != proposal.inputs.end();
            if (!isUsed && axis.score() >= kAlsoMovedShare * m_axes.front().score())
                proposal.remarks.push_back(phrase("{1} moved as well, by {2} counts; was another lever touched, or "
                                                  "does one feel the other?")
                                               .with(m_nameOf(axis.place), std::to_string(std::llround(axis.change))));
        }
        for (const InputPlace place : m_watch.restless())
            proposal.remarks.push_back(
                phrase("{1} never stood still and was left out; is anything connected?").with(m_nameOf(place)));
    }

    const WiringWish& m_wish;
    const Aircraft& m_aircraft;
    const InputWatch& m_watch;
    const std::vector<StageResult>& m_stages;
    const InputNamer& m_nameOf;
    const Signal& m_signal;
    std::vector<FoundInput> m_axes;
    std::vector<ContactStates> m_contacts;
};

} // namespace

BenchResult<WiringProposal> solveWiring(const WiringWish& wish, const Aircraft& aircraft, const InputWatch& watch,
                                        const std::vector<StageResult>& stages, const InputNamer& nameOf) {
    for (const SignalId id : wish.signals)
        if (wish.way == WiringWay::Found && wish.signals.size() > 1 && aircraft.signals[id].kind != SignalKind::Number)
            return benchFailure(
                "wrong-signals",
                phrase("only numbers can share one lever; wire '{1}' by itself").with(aircraft.signals[id].name));
    if (wish.way != WiringWay::Found)
        return solveSpecial(wish, aircraft, watch, stages, nameOf);
    return Solver(wish, aircraft, watch, stages, nameOf).solve();
}

} // namespace flowhand
