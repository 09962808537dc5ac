#include "bench/contacthealth.h"

#include <algorithm>

#include "base/names.h"
#include "bench/millistext.h"
#include "bench/statistics.h"

namespace flowhand {

namespace {

using std::chrono::milliseconds;

/// Edges nearer to each other are one change with its bounce, or a moment's chatter. Four times the longest of the 18
/// published bounces; a hand does not open and close a switch so fast (common practice: 50 ms and more).
constexpr Duration kBurst = milliseconds(25);
/// Of 18 measured switches the mean was 1,557 us and the longest 6,200 us (J. Ganssle, A Guide to Debouncing, as quoted
/// second-hand); paddle contacts 5 to 10 ms (Curtis, second-hand). Twice that is no longer a contact as sold.
constexpr Duration kUsualBounce = milliseconds(10);
constexpr Duration kWornBounce = milliseconds(20);
constexpr std::size_t kMuchChatter = 3;

struct Burst {
    std::size_t first = 0; ///< edges [first, last]
    std::size_t last = 0;
};

std::vector<Burst> burstsOf(const ContactEdges& edges) {
    std::vector<Burst> bursts;
    for (std::size_t i = 0; i < edges.times.size(); ++i) {
        if (bursts.empty() || edges.times[i] - edges.times[i - 1] > kBurst)
            bursts.push_back({i, i});
        bursts.back().last = i;
    }
    return bursts;
}

void judgeBounce(ContactHealth& health, const ContactHealthAsk& ask) {
    const Soundness verdict = health.longestBounce > kWornBounce    ? Soundness::Bad
                              : health.longestBounce > kUsualBounce ? Soundness::Caution
                                                                    : Soundness::Good;
    Phrase text =
        phrase("bounces for {1} at most, {2} in the middle of {3} changes")
            .with(millisText(health.longestBounce), millisText(health.meanBounce), std::to_string(health.changes));
    if (ask.interval > milliseconds(2))
        text = phrase("{1} (as far as a report every {2} shows)").with(std::move(text), millisText(ask.interval));
    health.findings.push_back(
        {"bounce", verdict, std::move(text),
         phrase("measured switches bounce for 1.6 ms on average and 6.2 ms at most, paddle contacts for up to 10 ms"),
         verdict == Soundness::Good ? Phrase()
                                    : phrase("raise 'debounce' above it; clean or change the switch, and see that the "
                                             "lever presses it firmly")});
}

void judgeChatter(ContactHealth& health) {
    const Soundness verdict = health.chatter >= kMuchChatter ? Soundness::Bad
                              : health.chatter > 0           ? Soundness::Caution
                                                             : Soundness::Good;
    health.findings.push_back(
        {"chatter", verdict,
         health.chatter == 0 ? phrase("stays as it is put")
                             : phrase("changed for a moment and back {1} times").with(std::to_string(health.chatter)),
         verdict == Soundness::Good ? phrase("no change that a hand did not make")
                                    : phrase("a hand cannot press and let go within 25 ms"),
         verdict == Soundness::Good ? Phrase()
                                    : phrase("see to plug, solder and crimp, to a lever that only just touches the "
                                             "switch, and to a cable beside motors or lamps")});
}

} // namespace

ContactEdges edgesOf(const Series& series) {
    ContactEdges edges;
    edges.name = series.input.name;
    edges.end = series.end;
    bool isClosed = false;
    for (std::size_t i = 0; i < series.points.size(); ++i) {
        const RawChange& point = series.points[i];
        const bool now = !point.isNull && point.raw != series.input.lowest;
        if (i == 0) {
            edges.begin = point.time;
            edges.isClosedFirst = now;
        } else if (now != isClosed) {
            edges.times.push_back(point.time);
        }
        isClosed = now;
    }
    return edges;
}

ContactHealth measureContact(const ContactEdges& edges, const ContactHealthAsk& ask) {
    ContactHealth health;
    std::vector<double> bounces;
    Time before = -kForever;
    for (const Burst burst : burstsOf(edges)) {
        if ((burst.last - burst.first) % 2 == 1) { // as it was before
            health.chatter += ask.hasFastEdges ? 0 : 1;
            continue;
        }
        const Duration bounce = edges.times[burst.last] - edges.times[burst.first];
        ++health.changes;
        bounces.push_back(seconds(bounce));
        health.longestBounce = std::max(health.longestBounce, bounce);
        const auto micros = std::chrono::floor<std::chrono::microseconds>(bounce).count();
        const auto bin = std::lower_bound(kBounceBinsMicros.begin(), kBounceBinsMicros.end(), micros);
        ++health.histogram[static_cast<std::size_t>(bin - kBounceBinsMicros.begin())];
        if (before != -kForever) {
            const Duration state = edges.times[burst.first] - before;
            health.shortestState = health.shortestState == Duration{} ? state : std::min(health.shortestState, state);
        }
        before = edges.times[burst.last];
    }
    health.meanBounce = fromSeconds(meanOf(bounces));
    if (health.changes == 0) {
        health.findings.push_back(
            {"stuck", ask.isOperated ? Soundness::Bad : Soundness::Unmeasured,
             edges.isClosedFirst ? phrase("stayed closed all the time") : phrase("stayed open all the time"),
             ask.isOperated ? phrase("it was worked and did not change") : phrase("nobody worked it"),
             ask.isOperated ? phrase("see to its wire and whether the lever reaches it; 'flowhand devices "
                                     "--watch' shows which input stirs")
                            : phrase("work it a few times while it is measured")});
    } else if (!ask.hasFastEdges) {
        judgeBounce(health, ask);
    }
    judgeChatter(health);
    return health;
}

namespace {

/// One edge of one of a switch's contacts.
struct SwitchEdge {
    Time time{};
    std::size_t contact = 0;
};

/// Goes through all of a switch's contacts at once.
class SwitchDoctor {
public:
    SwitchDoctor(const std::vector<ContactEdges>& contacts, const SwitchHealthAsk& ask)
        : m_contacts(contacts), m_ask(ask), m_hasClosed(contacts.size()) {
        for (std::size_t i = 0; i < contacts.size(); ++i) {
            m_isClosed.push_back(contacts[i].isClosedFirst);
            m_hasClosed[i] = contacts[i].isClosedFirst;
            for (const Time time : contacts[i].times)
                m_edges.push_back({time, i});
        }
        std::stable_sort(m_edges.begin(), m_edges.end(), [](const SwitchEdge& a, const SwitchEdge& b) {
            return a.time < b.time;
        });
    }

    SwitchHealth run() {
        m_single = single();
        m_since = m_contacts.empty() ? Time{} : m_contacts.front().begin;
        for (std::size_t i = 0; i < m_edges.size();) {
            const Time time = m_edges[i].time;
            if (i > 0 || m_single != m_contacts.size()) // where it stood before anybody turned it is no transit
                count(time - m_since);
            for (; i < m_edges.size() && m_edges[i].time == time; ++i) { // of one report
                m_isClosed[m_edges[i].contact] = !m_isClosed[m_edges[i].contact];
                m_hasClosed[m_edges[i].contact] = true;
            }
            m_since = time;
            arrive();
        }
        if (!m_contacts.empty() && closed() > 1) // to the end
            m_out.longestBoth = std::max(m_out.longestBoth, m_both + m_contacts.front().end - m_since);
        m_out.usualNone = fromSeconds(medianOf(m_nones));
        m_out.usualBoth = fromSeconds(medianOf(m_boths));
        for (std::size_t i = 0; i < m_contacts.size(); ++i)
            if (!m_hasClosed[i])
                m_out.neverClosed.push_back(m_contacts[i].name);
        judge();
        return std::move(m_out);
    }

private:
    [[nodiscard]] std::ptrdiff_t closed() const { return std::count(m_isClosed.begin(), m_isClosed.end(), true); }
    /// The one that is closed, if it is one.
    [[nodiscard]] std::size_t single() const {
        return closed() == 1 ? static_cast<std::size_t>(std::find(m_isClosed.begin(), m_isClosed.end(), true) -
                                                        m_isClosed.begin())
                             : m_contacts.size();
    }

    /// The state until now lasted `length`.
    void count(Duration length) {
        if (closed() == 0)
            m_none += length;
        else if (closed() > 1)
            m_both += length;
    }

    /// A position is reached; what was before was the way to it, bounces and all.
    void arrive() {
        const std::size_t now = single();
        if (closed() > 1)
            m_out.longestBoth = std::max(m_out.longestBoth, m_both);
        if (now == m_contacts.size())
            return;
        m_out.longestBoth = std::max(m_out.longestBoth, m_both);
        if (now != m_single && m_single != m_contacts.size()) {
            ++m_out.changes;
            m_nones.push_back(seconds(m_none));
            m_boths.push_back(seconds(m_both));
            m_out.longestNone = std::max(m_out.longestNone, m_none);
        }
        m_single = now;
        m_none = m_both = Duration{};
    }

    void judge() {
        const Soundness both = m_out.longestBoth > m_ask.transit ? Soundness::Bad : Soundness::Good;
        m_out.findings.push_back(
            {"both on", both,
             phrase("two contacts closed together for {1} at most").with(millisText(m_out.longestBoth)),
             both == Soundness::Good ? phrase("within the transit time; a switch that makes before it breaks does so")
                                     : phrase("longer than the transit time of {1}").with(millisText(m_ask.transit)),
             both == Soundness::Good ? Phrase()
                                     : phrase("look for a bridge of solder, two wires at one terminal, or a second "
                                              "switch on the same inputs")});
        const bool isLong = m_out.longestNone > m_ask.transit && !m_ask.hasOpenPosition;
        m_out.findings.push_back(
            {"none on", isLong ? Soundness::Caution : Soundness::Good,
             phrase("between two positions none was closed for {1} at most, {2} usually")
                 .with(millisText(m_out.longestNone), millisText(m_out.usualNone)),
             isLong ? phrase("longer than the transit time of {1}").with(millisText(m_ask.transit))
                    : phrase("a switch that breaks before it makes does so; that is no fault"),
             isLong ? phrase("turn it from click to click without stopping between; if that does not help, a contact "
                             "or its wire is open there, or 'transit' is too short for your hand")
                    : Phrase()});
        if (m_out.neverClosed.empty())
            return;
        m_out.findings.push_back(
            {"positions", m_ask.isOperated ? Soundness::Bad : Soundness::Unmeasured,
             phrase("never closed: {1}").with(joined(m_out.neverClosed, ", ")),
             m_ask.isOperated ? phrase("each position has to be reached when it is turned through all")
                              : phrase("it was not turned through all positions"),
             m_ask.isOperated ? phrase("see to these wires and their solder, and to the stop of the switch")
                              : phrase("turn it through all positions while it is measured")});
    }

    const std::vector<ContactEdges>& m_contacts;
    const SwitchHealthAsk& m_ask;
    std::vector<SwitchEdge> m_edges;
    std::vector<bool> m_isClosed;
    std::vector<bool> m_hasClosed;
    std::size_t m_single = 0; ///< the last position reached
    Time m_since{};
    Duration m_none{};
    Duration m_both{};
    std::vector<double> m_nones;
    std::vector<double> m_boths;
    SwitchHealth m_out;
};

} // namespace

SwitchHealth measureSwitch(const std::vector<ContactEdges>& contacts, const SwitchHealthAsk& ask) {
    return SwitchDoctor(contacts, ask).run();
}

} // namespace flowhand
