#pragma once

#include <cstdint>
#include <cstdlib>
#include <span>

#include "feed/intake.h"
#include "feed/parser.h"

/// Gives the bytes to a parser, first as a stream in pieces, then as one datagram, and what comes of them to an intake;
/// ends the program where that breaks a promise.
inline int feedBytes(flowhand::FeedFormat format, const std::uint8_t* data, std::size_t size) {
    using namespace flowhand;
    static const SignalTable table = [] {
        SignalTable signals;
        for (const char* name : {"thrust_lever_1", "airspeed", "ground_speed", "vertical_speed", "altitude", "heading",
                                 "track", "line_curvature", "on_ground", "reverser_1"}) {
            const std::string_view text = name;
            Signal signal;
            signal.name = signal.label = name;
            const bool isDirection = text == "heading" || text == "track";
            signal.unit = *findUnit(isDirection                ? "deg"
                                    : text == "altitude"       ? "ft"
                                    : text == "vertical_speed" ? "ft/min"
                                    : text == "line_curvature" ? ""
                                                               : "kt");
            signal.lowest = isDirection ? 0.0 : -2000.0;
            signal.highest = isDirection ? 360.0 : 45000.0;
            if (text == "on_ground")
                signal.kind = SignalKind::OnOff;
            if (text == "reverser_1") {
                signal.kind = SignalKind::Position;
                signal.positions = {"stowed", "deployed"};
            }
            (void)signals.add(signal);
        }
        return signals;
    }();
    constexpr Duration kBetween = std::chrono::milliseconds(7);
    FeedTally tally;
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;
    FeedIntake intake({&table, 1});
    Time now{};
    const FeedSink sink = [&](const FeedMessage& message) {
        intake.take(now += kBetween, message, tally, changes, notices);
    };
    const auto parser = makeParser(format, {&table, 1});
    for (std::size_t at = 0; at < size; at += 13)
        parser->take(std::span(data, size).subspan(at, std::min<std::size_t>(13, size - at)), tally, sink);
    parser->finish(tally, sink);
    const FeedTally cut = tally;
    tally = {};
    parser->take({data, size}, tally, sink);
    parser->finish(tally, sink);
    if (tally.malformed != cut.malformed || tally.others != cut.others || tally.badChecksum != cut.badChecksum ||
        tally.oversized != cut.oversized || tally.names.size() > FeedTally::kMostNames)
        std::abort();
    for (const FeedChange& change : changes) {
        const Signal& signal = table[change.signal];
        const bool isNumber = signal.kind == SignalKind::Number && change.value.isKnown();
        if (indexOf(change.signal) < 1 ||
            (isNumber && !(change.value.number() >= signal.lowest && change.value.number() <= signal.highest)))
            std::abort();
    }
    return 0;
}
