#include "device/hub.h"

#include <algorithm>
#include <atomic>
#include <string>
#include <thread>

#include "base/doorbell.h"
#include "base/quietthread.h"
#include "device/devicereader.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

constexpr Duration kLongestWait = std::chrono::hours(1); // the caller waits again
/// Between two wake-ups by axes that are attended to: under thousands of reports a second each takes what has come in
/// this time, which costs a fraction and leaves a fifth of the millisecond by which a step may be seen later than a
/// bare loop sees it. A report after a rest, and a press at any time, wake at once.
constexpr Duration kWakePeriod = std::chrono::microseconds(800);

} // namespace

/// The finder's thread looks for missing units when the system says that something changed, and a second later where
/// that leaves a doubt (rights of a new node come late) or a unit was lost; it opens nothing.
struct DeviceHub::State {
    State(HidSystem& hidSystem, RunClock runClock, std::vector<DeviceWish> wished, std::size_t queueLength);
    ~State();

    [[nodiscard]] std::vector<WishMatch> look() const;
    bool serve(const std::vector<WishMatch>& matches, bool isFirst);
    void find();
    [[nodiscard]] bool hasMissing() const;
    [[nodiscard]] bool takeLosses();

    HidSystem& system;
    const RunClock clock;
    const std::vector<DeviceWish> wishes;
    Doorbell bell;                ///< for the session thread
    Time woken = Time::min() / 2; ///< the last time; the session thread's
    std::unique_ptr<HidWatch> watch;
    std::vector<std::unique_ptr<DeviceReader>> readers; ///< by wish
    std::vector<std::string> doubts;                    ///< by wish, of the finder: a reason found once, not yet said
    std::atomic<bool> isStopping = false;
    std::thread finder; ///< started last
};

DeviceHub::State::State(HidSystem& hidSystem, RunClock runClock, std::vector<DeviceWish> wished,
                        std::size_t queueLength)
    : system(hidSystem), clock(runClock), wishes(std::move(wished)), watch(system.watch()), doubts(wishes.size()) {
    for (std::size_t i = 0; i < wishes.size(); ++i)
        readers.push_back(
            std::make_unique<DeviceReader>(static_cast<DeviceIndex>(i), wishes[i], system, clock, bell, queueLength));
}

DeviceHub::State::~State() {
    isStopping = true;
    watch->wake();
    if (finder.joinable())
        finder.join();
    for (const auto& reader : readers)
        reader->stop();
}

std::vector<WishMatch> DeviceHub::State::look() const {
    std::vector<std::optional<DeviceInfo>> known;
    for (const auto& reader : readers)
        known.push_back(reader->lastUnit());
    return matchWishes(wishes, system.list(), known);
}

/// Gives units to the readers that miss one. A reason for missing it is said at once the first time, later only when
/// it was found twice in a row. True while there is one not yet said.
bool DeviceHub::State::serve(const std::vector<WishMatch>& matches, bool isFirst) {
    bool hasDoubt = false;
    for (std::size_t i = 0; i < matches.size(); ++i) {
        if (!readers[i]->isMissing())
            continue;
        const std::optional<DeviceInfo>& unit = matches[i].unit;
        if (unit && unit->readable) {
            doubts[i].clear();
            readers[i]->give(*unit);
            continue;
        }
        const Error why = unit ? Error{"unreadable-device", wishText(wishes[i]) + ": " + unit->whyNot, wishes[i].place}
                               : matches[i].why;
        if (isFirst || doubts[i] == why.code)
            readers[i]->tellMissing(why);
        else
            hasDoubt = true;
        doubts[i] = why.code;
    }
    return hasDoubt;
}

void DeviceHub::State::find() {
    bool isAgain = false;
    while (!isStopping) {
        const bool mayHaveChanged = watch->wait(kSearchPeriod);
        const bool isDue = takeLosses() || mayHaveChanged || isAgain;
        if (isStopping || !isDue)
            continue;
        const bool hasDoubt = hasMissing() && serve(look(), false);
        isAgain = hasDoubt || mayHaveChanged;
    }
}

bool DeviceHub::State::hasMissing() const {
    return std::any_of(readers.begin(), readers.end(), [](const auto& reader) {
        return reader->isMissing();
    });
}

bool DeviceHub::State::takeLosses() {
    bool hasLoss = false;
    for (const auto& reader : readers)
        hasLoss |= reader->takeLoss();
    return hasLoss;
}

DeviceHub::DeviceHub(std::unique_ptr<State> state) : m_state(std::move(state)) {}

DeviceHub::~DeviceHub() = default;

Result<std::unique_ptr<DeviceHub>> DeviceHub::open(HidSystem& system, const Clock& clock, Time origin,
                                                   std::vector<DeviceWish> wishes, std::size_t queueLength) {
    if (const Status status = checkWishes(wishes); !status)
        return tl::unexpected(status.error());
    auto state = std::make_unique<State>(system, RunClock{clock, origin}, std::move(wishes), queueLength);
    const std::vector<WishMatch> matches = state->look();
    for (const WishMatch& match : matches)
        if (!match.unit && match.why.code == "equal-units")
            return tl::unexpected(match.why);
    state->serve(matches, true);
    state->finder = quietThread([raw = state.get()] {
        raw->find();
    });
    return std::unique_ptr<DeviceHub>(new DeviceHub(std::move(state)));
}

const std::vector<DeviceWish>& DeviceHub::wishes() const {
    return m_state->wishes;
}

void DeviceHub::drain(std::vector<Reading>& readings, std::vector<DeviceNotice>& notices) {
    const auto firstReading = static_cast<std::ptrdiff_t>(readings.size());
    const auto firstNotice = static_cast<std::ptrdiff_t>(notices.size());
    for (const auto& reader : m_state->readers)
        reader->drain(readings, notices);
    const auto isEarlier = [](const auto& a, const auto& b) {
        return a.time < b.time;
    };
    std::stable_sort(readings.begin() + firstReading, readings.end(), isEarlier);
    std::stable_sort(notices.begin() + firstNotice, notices.end(), isEarlier);
}

void DeviceHub::waitUntil(Time deadline) {
    State& state = *m_state;
    const Time now = state.clock.now();
    if (deadline > now)
        (void)state.bell.wait(std::min<Time>(deadline, now + kLongestWait) - now, state.woken + kWakePeriod - now,
                              state.woken + kLeisure - now);
    state.woken = state.clock.now();
}

void DeviceHub::wake() {
    m_state->bell.ring();
}

Time DeviceHub::now() const {
    return m_state->clock.now();
}

void DeviceHub::listenOnlyTo(DeviceIndex device, std::vector<bool> inputs) {
    m_state->readers[device]->listenOnlyTo(std::move(inputs));
}

void DeviceHub::attendTo(DeviceIndex device, std::vector<bool> inputs) {
    m_state->readers[device]->attendTo(std::move(inputs));
}

std::vector<InputInfo> DeviceHub::inputs(DeviceIndex device) const {
    return m_state->readers[device]->inputs();
}

std::optional<DeviceInfo> DeviceHub::connected(DeviceIndex device) const {
    return m_state->readers[device]->connected();
}

DeviceCounters DeviceHub::counters(DeviceIndex device) const {
    return m_state->readers[device]->counters();
}

} // namespace flowhand
