#include "bench/workbench.h"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <utility>

#include "bench/benchjob.h"

namespace flowhand {

namespace {

/// A view shows no more changes than a display does.
constexpr Duration kShowPeriod = std::chrono::microseconds(16'667);
/// So often it is looked for devices that came; those that are known are the hub's.
constexpr Duration kSearchPeriod = std::chrono::seconds(1);
constexpr std::chrono::milliseconds kIdle(100);
/// A control stirs for so long after it moved.
constexpr Duration kStirring = std::chrono::milliseconds(800);
/// 10 s at 1 kHz.
constexpr std::size_t kMostPoints = 10000;
constexpr std::size_t kMostNotices = 4;

std::optional<double> plotted(const Signal& signal, Value value) {
    if (!value.isKnown())
        return std::nullopt;
    // Between two positions it is not known between which; it is drawn below the first.
    return signal.kind == SignalKind::Position ? double(value.position()) : value.number();
}

} // namespace

struct Workbench::State {
    State(Parts given, std::function<void()> changed) : parts(std::move(given)), onChange(std::move(changed)) {}

    ~State() {
        isStopping = true;
        wake.notify_all();
        if (thread.joinable())
            thread.join();
    }

    // --- the rig; the opening thread, then the bench's ---

    Status load() {
        Result<BenchRigState> fresh = loadRigState(parts.rigFile, parts.aircraft);
        if (!fresh)
            return tl::unexpected<Error>(fresh.error());
        job.reset(); // it refers to the rig before
        feed.reset();
        rig = std::move(*fresh);
        shared = std::make_shared<const std::vector<SharedInput>>(sharedOf(rig.rig));
        watchable = travelsOf(rig.rig, parts.aircraft.signals);
        std::vector<GateTravel> levers;
        for (const WatchedTravel& lever : watchable)
            levers.push_back(lever.travel);
        travels = std::make_shared<const std::vector<GateTravel>>(std::move(levers));
        values.assign(parts.aircraft.controls.size(), Value::unknown());
        stirredAt.assign(values.size(), Time::min());
        if (rig.live && source)
            feedAnew();
        return loadEvidence();
    }

    Status loadEvidence() {
        Problems problems;
        Result<std::vector<EvidenceRecord>> evidence = readEvidence(evidenceFileOf(parts.rigFile), problems);
        if (!evidence)
            return tl::unexpected<Error>(evidence.error());
        for (const Problem& problem : problems.all())
            notice(describe(problem.error));
        rig.evidence = std::move(*evidence);
        Result<Coverage> ofFirst = coverageFor({parts.aircraft.seats.front()});
        Result<Coverage> ofAll = coverageFor(parts.aircraft.seats);
        if (!ofFirst || !ofAll)
            return tl::unexpected<Error>(ofFirst ? ofAll.error() : ofFirst.error());
        coverage = std::make_shared<const Coverage>(std::move(*ofFirst));
        bothSeats = std::make_shared<const Coverage>(std::move(*ofAll));
        measured = std::make_shared<const std::vector<MeasuredControl>>(measuredOf(rig));
        filters = std::make_shared<const std::vector<ControlFilters>>(filtersOf(rig, parts.aircraft, parts.flows));
        return {};
    }

    /// It moves a rig in thought, so it gets one of its own.
    [[nodiscard]] Result<Coverage> coverageFor(std::vector<std::string> seats) const {
        Problems problems;
        std::optional<RigFile> thought = RigFile{};
        if (rig.isThere)
            thought = parseRigFile(rig.rig.source, parts.rigFile, parts.aircraft.signals,
                                   parts.aircraft.controls.size(), problems);
        if (!thought)
            return tl::unexpected<Error>(problems.firstError());
        return coverageOf(*thought, {parts.aircraft, parts.flows, rig.evidence, std::move(seats)});
    }

    // --- the bench's thread ---

    void work() {
        while (!isStopping) {
            searchDevices();
            InputNews news;
            if (devices) {
                std::optional<InputNews> came = source->next();
                if (!came)
                    break;
                news = std::move(*came);
            } else {
                std::unique_lock lock(mutex);
                wake.wait_for(lock, kIdle);
                news.now = now;
            }
            take(news);
            obey(news.now);
            show(false);
        }
    }

    /// Opens all controls that are connected, anew when one came that was not there before. A task is not disturbed.
    void searchDevices() {
        const Time clockNow = parts.clock.now();
        if (clockNow - searchedAt < kSearchPeriod || (job && !job->view().isOver))
            return;
        searchedAt = clockNow;
        std::vector<DeviceInfo> present = parts.system.list();
        present.erase(std::remove_if(present.begin(), present.end(),
                                     [](const DeviceInfo& device) {
                                         return device.deviceClass != DeviceClass::Controls;
                                     }),
                      present.end());
        const bool isKnown = std::all_of(present.begin(), present.end(), [this](const DeviceInfo& device) {
            return source &&
                   std::any_of(source->devices().begin(), source->devices().end(), [&](const SourceDevice& known) {
                       return known.vendor == device.vendor && known.product == device.product &&
                              known.port == device.port;
                   });
        });
        if (present.empty() || isKnown)
            return;
        job.reset();
        feed.reset();
        devices.reset();
        source.reset();
        Result<std::unique_ptr<InputSource>> opened = liveSource(parts.system, parts.clock, rig.rig.devices, [this] {
            return isStopping.load();
        });
        if (!opened)
            return notice(describe(opened.error()));
        source = std::move(*opened);
        devices.emplace(BenchDevices{*source, {}, {}, {}});
        trace.clear();
        if (rig.live)
            feedAnew();
    }

    /// A rig that comes to devices which have spoken already hears what they said last.
    void feedAnew() {
        feed.emplace(rig.rig, *rig.live, *source);
        if (!devices)
            return;
        InputNews before;
        before.now = devices->now;
        before.connected.assign(devices->connected.begin(), devices->connected.end());
        for (const auto& [input, reading] : devices->last)
            before.readings.push_back(reading);
        std::sort(before.readings.begin(), before.readings.end(), [](const Reading& a, const Reading& b) {
            return a.time < b.time;
        });
        std::vector<Sample> samples;
        feedRig(before, samples);
    }

    void feedRig(const InputNews& news, std::vector<Sample>& samples) {
        std::vector<Phrase> messages;
        feed->take(news, samples, messages);
        for (const Phrase& message : messages)
            notice(message);
        const std::lock_guard lock(mutex);
        const WatchedTravel* lever = watchedTravel();
        if (lever != nullptr)
            traceTravel(*lever, news);
        for (const Sample& sample : samples) {
            const std::size_t at = indexOf(sample.signal);
            if (at >= values.size())
                continue;
            if (values[at].isKnown())
                stirredAt[at] = sample.time;
            values[at] = sample.value;
            if (sample.signal == watched && lever == nullptr)
                trace.push_back({sample.time, plotted(parts.aircraft.signals[sample.signal], sample.value)});
        }
        while (trace.size() > kMostPoints)
            trace.pop_front();
    }

    /// Of the watched control, if it is a lever with gates; under the mutex.
    [[nodiscard]] const WatchedTravel* watchedTravel() const {
        const auto found = std::find_if(watchable.begin(), watchable.end(), [this](const WatchedTravel& lever) {
            return lever.travel.signal == watched;
        });
        return found == watchable.end() ? nullptr : &*found;
    }

    void traceTravel(const WatchedTravel& lever, const InputNews& news) {
        const auto place = feed->placeOf(lever.input);
        if (!place || !devices)
            return;
        const auto last = devices->last.find(*place);
        if (std::exchange(traced, watched) != watched && last != devices->last.end())
            trace.push_back({now, static_cast<double>(last->second.raw)}); // where it stands
        for (const Reading& reading : news.readings)
            if (std::pair(reading.device, reading.input) == *place && !reading.isNull)
                trace.push_back({reading.time, static_cast<double>(reading.raw)});
    }

    void take(const InputNews& news) {
        now = news.now;
        std::vector<Sample> samples;
        if (devices) {
            devices->now = news.now;
            devices->connected.insert(news.connected.begin(), news.connected.end());
            for (const Reading& reading : news.readings)
                devices->last[{reading.device, reading.input}] = reading;
        }
        if (feed)
            feedRig(news, samples);
        else
            for (const Phrase& message : news.messages)
                notice(message);
        if (!job)
            return;
        job->take(news, samples);
        view = job->view();
        if (!job->takeWritten())
            return;
        // A walk goes on with the rig that it has; its evidence alone is new.
        const Status loaded = view.task == BenchTask::Walk ? loadEvidence() : load();
        if (!loaded)
            notice(describe(loaded.error()));
    }

    void obey(Time at) {
        std::vector<Order> todo;
        {
            const std::lock_guard lock(mutex);
            todo.swap(orders);
        }
        for (const Order& order : todo) {
            if (order.kind == Order::Begin)
                beginTask(order.wish, at);
            else if (order.kind == Order::Next && job)
                job->next(at);
            else if (order.kind == Order::Cancel) {
                job.reset();
                view = {};
            }
            if (job)
                view = job->view();
        }
    }

    void beginTask(const BenchWish& wish, Time at) {
        job.reset();
        view = {};
        view.task = wish.task;
        view.signal = wish.signal;
        view.isOver = true;
        if (wish.task == BenchTask::ApplyFilters || wish.task == BenchTask::UndoFilters ||
            wish.task == BenchTask::SetTolerances)
            change(wish);
        else if (!devices)
            view.outcome = {phrase("No lever, pedal or switch unit is connected. Plug one in first.")};
        else if (wish.task == BenchTask::Wire)
            beginWiring(wish);
        else if (!feed || !feed->isAnyThere())
            view.outcome = {phrase("None of the rig's devices is connected, or nothing is wired yet.")};
        else if (wish.task == BenchTask::Walk)
            job = walkJob(parts.aircraft, rig, *feed, values, at);
        else
            job = measureJob(wish, {parts.aircraft, parts.flows, rig}, parts.system, parts.clock, at);
    }

    void change(const BenchWish& wish) {
        const BenchResult<std::vector<Phrase>> changed = changeRig(wish, {parts.aircraft, parts.flows, rig});
        view.isGood = changed.has_value();
        view.goodCount = changed ? 1 : 0;
        view.outcome = changed ? *changed : std::vector<Phrase>{changed.error().words};
        if (const Status loaded = load(); !loaded) // also where a part of it was written
            notice(describe(loaded.error()));
    }

    void beginWiring(const BenchWish& wish) {
        const BenchResult<WiringWish> wiring =
            parseWiringWish(wish.words.empty() ? parts.aircraft.signals[wish.signal].name : wish.words, parts.aircraft);
        if (wiring)
            job = wireJob(parts.aircraft, parts.rigFile, *wiring, *devices);
        else
            view.outcome = {wiring.error().words};
    }

    void show(bool isFirst) {
        const Time clockNow = parts.clock.now();
        if (!isFirst && clockNow - shownAt < kShowPeriod)
            return;
        shownAt = clockNow;
        {
            const std::lock_guard lock(mutex);
            shown.now = now;
            shown.rigTitle =
                rig.isThere ? Phrase(rig.rig.title) : phrase("New rig of the {1}").with(parts.aircraft.title);
            shown.values = values;
            shown.stirring.resize(values.size());
            for (std::size_t i = 0; i < values.size(); ++i)
                shown.stirring[i] = stirredAt[i] != Time::min() && now - stirredAt[i] < kStirring;
            shown.devices = deviceViews();
            shown.coverage = coverage;
            shown.bothSeats = bothSeats;
            shown.measured = measured;
            shown.filters = filters;
            shown.shared = shared;
            shown.tolerances = rig.rig.tolerances;
            shown.travels = travels;
            shown.task = view;
            shown.notices.assign(notices.begin(), notices.end());
        }
        if (!isFirst)
            onChange();
    }

    [[nodiscard]] std::vector<BenchDevice> deviceViews() const {
        std::vector<BenchDevice> all;
        if (source)
            for (std::size_t i = 0; i < source->devices().size(); ++i)
                all.push_back(
                    {source->devices()[i].name, devices->connected.count(static_cast<DeviceIndex>(i)) > 0, {}});
        if (feed)
            for (const Phrase& missing : feed->missing())
                all.push_back({{}, false, missing});
        return all;
    }

    void notice(const Phrase& words) {
        if (std::find(notices.begin(), notices.end(), words) != notices.end())
            return;
        notices.push_back(words);
        if (notices.size() > kMostNotices)
            notices.pop_front();
    }

    struct Order {
        enum Kind { Begin, Next, Cancel } kind;
        BenchWish wish = {};
    };

    void post(const Order& order) {
        {
            const std::lock_guard lock(mutex);
            orders.push_back(order);
        }
        wake.notify_all();
    }

    Parts parts;
    std::function<void()> onChange;
    std::atomic<bool> isStopping = false;

    // The bench's thread alone, once it runs; in the order in which they refer to each other.
    BenchRigState rig;
    std::unique_ptr<InputSource> source;
    std::optional<BenchDevices> devices;
    std::optional<RigFeed> feed;
    std::unique_ptr<BenchJob> job;
    BenchTaskView view;
    std::vector<Value> values;   ///< by SignalId
    std::vector<Time> stirredAt; ///< by SignalId
    std::shared_ptr<const Coverage> coverage;
    std::shared_ptr<const Coverage> bothSeats;
    std::shared_ptr<const std::vector<MeasuredControl>> measured;
    std::shared_ptr<const std::vector<ControlFilters>> filters;
    std::shared_ptr<const std::vector<SharedInput>> shared;
    std::shared_ptr<const std::vector<GateTravel>> travels;
    std::vector<WatchedTravel> watchable;
    SignalId traced = kNoSignal; ///< the lever whose travel is in the trace
    std::deque<Phrase> notices;
    Time now{};
    Time searchedAt = Time::min() / 2;
    Time shownAt{};

    std::condition_variable wake;
    mutable std::mutex mutex; ///< guards all below
    std::vector<Order> orders;
    BenchSnapshot shown;
    SignalId watched = kNoSignal;
    std::deque<BenchPoint> trace;

    std::thread thread; ///< last
};

Result<std::unique_ptr<Workbench>> Workbench::open(Parts parts, std::function<void()> onChange) {
    auto state = std::make_unique<State>(std::move(parts), std::move(onChange));
    if (const Status loaded = state->load(); !loaded)
        return tl::unexpected<Error>(loaded.error());
    state->show(true);
    State& running = *state;
    state->thread = std::thread([&running] {
        running.work();
    });
    return std::unique_ptr<Workbench>(new Workbench(std::move(state)));
}

Workbench::Workbench(std::unique_ptr<State> state) : m_state(std::move(state)) {}
Workbench::~Workbench() = default;

BenchSnapshot Workbench::snapshot() const {
    const std::lock_guard lock(m_state->mutex);
    return m_state->shown;
}

void Workbench::watch(SignalId signal) {
    const std::lock_guard lock(m_state->mutex);
    m_state->watched = signal;
    m_state->traced = kNoSignal;
    m_state->trace.clear();
    const BenchSnapshot& shown = m_state->shown;
    const bool isTravel = std::any_of(shown.travels->begin(), shown.travels->end(), [signal](const GateTravel& lever) {
        return lever.signal == signal;
    });
    if (indexOf(signal) < shown.values.size() && !isTravel)
        m_state->trace.push_back(
            {shown.now, plotted(m_state->parts.aircraft.signals[signal], shown.values[indexOf(signal)])});
}

std::vector<BenchPoint> Workbench::takeTrace() {
    const std::lock_guard lock(m_state->mutex);
    std::vector<BenchPoint> points(m_state->trace.begin(), m_state->trace.end());
    m_state->trace.clear();
    return points;
}

void Workbench::begin(BenchWish wish) {
    m_state->post({State::Order::Begin, std::move(wish)});
}

void Workbench::next() {
    m_state->post({State::Order::Next});
}

void Workbench::cancel() {
    m_state->post({State::Order::Cancel});
}

} // namespace flowhand
