#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "condition/margins.h"
#include "condition/monitor.h"
#include "condition/thresholds.h"
#include "condition/timers.h"
#include "condition/watch.h"

namespace flowhand {

/// A condition and how it is just now. It is judged twice at a time: at that very moment, and just after.
struct Watched {
    std::optional<Condition> condition; // none: a free place
    std::optional<Watch> watch;         // from the first settle() on
    std::optional<Margins> margins;     // only where they have to be followed
    Time reference = kForever;          // one that is still to come
    Key momentKey = kNever;             // of `moment`
    Kleene reported = Kleene::Unknown;
    Kleene moment = Kleene::Unknown;
    Kleene after = Kleene::Unknown;
    bool isMarked = false; // is in one of the lists to be judged
    bool isNew = true;
};

struct WatchedSignal {
    Value pending;
    bool isPending = false;
    bool isNumber = false;
    Thresholds thresholds;
    std::vector<Subscription> always; // read on every change
    std::vector<std::uint32_t> margins;
};

/// What a Monitor does; owned by it. Only core/condition/monitor.cpp uses it.
struct Monitor::Engine {
    explicit Engine(const SignalTable& table) : values(table.size()), signals(table.size()) {
        for (std::size_t i = 0; i < table.size(); ++i)
            signals[i].isNumber = table.all()[i].kind == SignalKind::Number;
    }

    std::uint32_t add(const Condition& condition, MarginUse margin);
    void begin(std::uint32_t id);
    void startWatch(Watched& place);
    void takeWhereItStands();
    void beginAnew();
    void remove(std::uint32_t id);
    void setReference(std::uint32_t id, Time reference);
    void settle(Time time, std::vector<TruthChange>& changes);
    void takePending();
    Time readPending(Time time);
    void read(std::size_t index);
    void renew(std::vector<TruthChange>& changes);
    void serve(Time time, Time reported, std::vector<TruthChange>& changes);
    void judgeMoment(std::uint32_t id, Key key);
    void judgeAfter(std::uint32_t id, Key key);
    void useReference(Watched& watched, Key key);
    void report(std::uint32_t id, Time time, std::vector<TruthChange>& changes);
    void setTimer(std::uint32_t id);
    void mark(std::uint32_t id) {
        if (!watched[id].isMarked) {
            watched[id].isMarked = true;
            marked.push_back(id);
        }
    }

    std::vector<Value> values; // as settled
    std::vector<WatchedSignal> signals;
    std::vector<std::uint32_t> pending; // signals set since
    std::vector<Watched> watched;
    std::vector<std::uint32_t> freePlaces;
    std::vector<std::uint32_t> renewed; // new, or with a new reference time, since the last settle()
    std::vector<std::uint32_t> marked;  // to be judged at the moment
    Timers timers;
    Time now{};   // settled last; 1 ns past `asked` where a time was settled again with other values
    Time asked{}; // the latest time that settle() was given
    bool hasBegun = false;
    bool isAnew = false; // the next settle() begins anew
};

} // namespace flowhand
