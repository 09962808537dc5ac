#include "session/run.h"

#include <condition_variable>
#include <mutex>
#include <thread>

#include "device/hub.h"

namespace flowhand {

namespace {

/// The window shows no more changes than a display does.
constexpr Duration kShowPeriod = std::chrono::microseconds(16'667);

} // namespace

struct Run::State {
    State(RunParts parts, const Clock& runClock, Time runOrigin, std::function<void()> changed)
        : devices(parts.devices), loop(std::move(parts)), clock(runClock), origin(runOrigin),
          onChange(std::move(changed)) {
        snapshot = loop.snapshot();
        thread = std::thread([this] {
            work();
        });
    }

    ~State() {
        post([this] {
            isStopping = true;
        });
        thread.join();
    }

    template <class Change>
    void post(Change change) {
        {
            const std::lock_guard lock(mutex);
            change();
        }
        if (devices != nullptr)
            devices->wake();
        wake.notify_one();
    }

    void work() {
        bool isOver = false;
        while (!isOver) {
            isOver = takeOrders();
            if (isOver && !loop.isEnded())
                loop.command(CommandKind::Stop);
            const Time now = clock.now() - origin;
            loop.advance(isOver ? now + 2 * kTick : now);
            if (!isOver && loop.isEnded())
                goOn();
            show(now, isOver);
            if (!isOver)
                rest(now);
        }
    }

    /// With the flow that follows, if any does.
    void goOn() {
        auto ended = std::make_shared<const RunSnapshot>(loop.snapshot());
        if (loop.goOn())
            before.push_back(std::move(ended));
    }

    /// What other threads asked for goes to the loop; true when it is time to stop.
    bool takeOrders() {
        const std::lock_guard lock(mutex);
        for (const auto& [kind, text] : commands)
            if (kind)
                loop.command(*kind, text);
            else
                loop.jump(text);
        for (const auto& [signal, value] : moves)
            loop.moveOnScreen(signal, value);
        commands.clear();
        moves.clear();
        return isStopping;
    }

    void show(Time now, bool isOver) {
        if (loop.changeCount() == shown || (now - shownAt < kShowPeriod && !loop.isEnded() && !isOver))
            return;
        shown = loop.changeCount();
        shownAt = now;
        {
            RunSnapshot fresh = loop.snapshot();
            fresh.before = before;
            (void)loop.takeEvents(); // the window shows the snapshot
            const std::lock_guard lock(mutex);
            snapshot = std::move(fresh);
        }
        if (onChange && !isOver)
            onChange();
    }

    /// Until the next thing is due, a device reports, or somebody asks for something.
    void rest(Time now) {
        Time until = std::min(loop.nextTime(), now + kShowPeriod);
        if (loop.isEnded())
            until = now + std::chrono::milliseconds(200);
        if (devices != nullptr) {
            devices->waitUntil(until);
            return;
        }
        std::unique_lock lock(mutex);
        if (until > now && commands.empty() && moves.empty() && !isStopping)
            wake.wait_for(lock, until - now);
    }

    DeviceHub* devices;
    RunLoop loop; ///< session thread only
    const Clock& clock;
    const Time origin;
    const std::function<void()> onChange;
    std::vector<std::shared_ptr<const RunSnapshot>> before; ///< session thread only
    std::uint64_t shown = 0;
    Time shownAt{};

    mutable std::mutex mutex; ///< guards what follows
    std::condition_variable wake;
    std::vector<std::pair<std::optional<CommandKind>, std::string>> commands; ///< without a kind: jump(step)
    std::vector<std::pair<SignalId, Value>> moves;
    bool isStopping = false;
    RunSnapshot snapshot;

    std::thread thread;
};

Run::Run(RunParts parts, const Clock& clock, Time origin, std::function<void()> onChange)
    : m_state(std::make_unique<State>(std::move(parts), clock, origin, std::move(onChange))) {}

Run::~Run() = default;

void Run::command(CommandKind kind, const std::string& text) {
    m_state->post([&] {
        m_state->commands.emplace_back(kind, text);
    });
}

void Run::jump(const std::string& step) {
    m_state->post([&] {
        m_state->commands.push_back({std::nullopt, step});
    });
}

void Run::moveOnScreen(SignalId signal, Value value) {
    m_state->post([&] {
        m_state->moves.emplace_back(signal, value);
    });
}

RunSnapshot Run::snapshot() const {
    const std::lock_guard lock(m_state->mutex);
    return m_state->snapshot;
}

} // namespace flowhand
