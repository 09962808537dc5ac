#pragma once

#include <array>
#include <string>

#include "feed/parser.h"

/// Signals as an aircraft has them: a control, then motion.
inline const flowhand::SignalTable& signalTable() {
    static const flowhand::SignalTable all = [] {
        using namespace flowhand;
        SignalTable table;
        const auto add = [&](const char* name, SignalKind kind, const char* unit = "", double lowest = 0,
                             double highest = 0, double scale = 1) {
            Signal signal;
            signal.name = signal.label = name;
            signal.kind = kind;
            signal.unit = *findUnit(unit);
            signal.lowest = lowest;
            signal.highest = highest;
            signal.scale = scale;
            if (kind == SignalKind::Position)
                signal.positions = {"stowed", "transit", "deployed"};
            (void)table.add(signal);
        };
        add("thrust_lever_1", SignalKind::Number, "%", 0, 100, 20);
        add("airspeed", SignalKind::Number, "kt", 0, 500, 100);
        add("ground_speed", SignalKind::Number, "kt", 0, 600, 100);
        add("vertical_speed", SignalKind::Number, "ft/min", -6000, 6000, 1000);
        add("altitude", SignalKind::Number, "ft", -2000, 45000, 1000);
        add("heading", SignalKind::Number, "deg", 0, 360, 30);
        add("on_ground", SignalKind::OnOff);
        add("line_curvature", SignalKind::Number, "", -100, 100, 20);
        add("reverser_1", SignalKind::Position);
        add("track", SignalKind::Number, "deg", 0, 360, 30);
        return table;
    }();
    return all;
}

inline flowhand::FeedSignals feedSignals() {
    return {&signalTable(), 1};
}

/// What a parser made of some bytes.
struct Parsed {
    flowhand::FeedTally tally;
    std::vector<flowhand::FeedMessage> messages;

    [[nodiscard]] std::string values() const {
        std::string text;
        for (const flowhand::FeedMessage& message : messages)
            for (const flowhand::FeedValue& value : message.values) {
                const flowhand::Signal& signal = signalTable()[value.signal];
                text += (text.empty() ? "" : ", ") + signal.name + " " + valueText(signal, value.value);
            }
        return text;
    }
    /// Everything that could not be taken.
    [[nodiscard]] std::uint64_t faults() const {
        return tally.malformed + tally.badChecksum + tally.oversized + tally.unknownNames + tally.refused;
    }
};

/// `bytes` as one datagram, or with `piece` cut into pieces of a stream.
inline Parsed parse(flowhand::FeedFormat format, const std::string& bytes, std::size_t piece = 0) {
    Parsed parsed;
    const auto parser = makeParser(format, feedSignals());
    const auto sink = [&](const flowhand::FeedMessage& message) {
        parsed.messages.push_back(message);
    };
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t size = piece == 0 ? bytes.size() : std::min(piece, bytes.size() - at);
        const auto* const data = reinterpret_cast<const std::uint8_t*>(bytes.data()) + at;
        parser->take({data, size}, parsed.tally, sink);
        at += size;
    }
    parser->finish(parsed.tally, sink);
    return parsed;
}

/// "7E 00 81" as bytes.
inline std::string fromHex(const std::string& text) {
    std::string bytes;
    for (std::size_t i = 0; i + 1 < text.size(); i += 3)
        bytes.push_back(static_cast<char>(std::stoi(text.substr(i, 2), nullptr, 16)));
    return bytes;
}
