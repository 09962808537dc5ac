#include "feed/message.h"

namespace flowhand {

SignalId FeedSignals::find(std::string_view name) const {
    const std::optional<SignalId> id = table->find(name);
    return id && indexOf(*id) >= first ? *id : kNoSignal;
}

} // namespace flowhand
