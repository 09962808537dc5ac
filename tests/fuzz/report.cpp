#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <span>

#include "device/report.h"

/// Two bytes of length, a descriptor of that length, then reports, each after a byte of length.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace flowhand;
    std::span<const std::uint8_t> rest(data, size);
    const auto take = [&](std::size_t wanted) {
        const auto part = rest.first(std::min(wanted, rest.size()));
        rest = rest.subspan(part.size());
        return part;
    };
    const auto head = take(2);
    if (head.size() < 2)
        return 0;
    auto descriptor = parseDescriptor(take(head[0] | std::size_t(head[1]) << 8));
    if (!descriptor)
        return 0;
    ReportDecoder decoder(std::move(*descriptor));
    std::vector<InputChange> changes;
    while (!rest.empty()) {
        const auto report = take(take(1)[0]);
        changes.clear();
        const ReportFit fit = decoder.decode(report, changes);
        const ReportValues values = decoder.values(report);
        if (fit != values.fit || (fit == ReportFit::UnknownId && !(changes.empty() && values.elements.empty())))
            std::abort();
        for (const InputChange& change : changes)
            if (change.input >= decoder.inputs().size())
                std::abort();
    }
    return 0;
}
