// One record of evidence as a line of JSON, and back (README.md, 'Evidence').
#include "bench/evidence.h"

#include <nlohmann/json.hpp>

#include "base/sha256.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::int64_t kFormat = 1;
/// Digits of the checksum: damage by accident stays unseen once in 2^64 times.
constexpr std::size_t kSumDigits = 16;
constexpr std::string_view kSumKey = ",\"sum\":\"";
/// No stretch of raw data is longer (two years), so that sums of differences cannot overflow.
constexpr std::int64_t kLongest = 63'072'000'000'000;

std::string sumOf(std::string_view body) {
    return sha256(body).substr(0, kSumDigits);
}

std::int64_t micros(Time time) {
    return std::chrono::floor<std::chrono::microseconds>(time).count();
}

/// Times and counts as differences to the one before: small numbers for a control that moves little.
Json jsonOf(const RawTrace& trace) {
    Json times = Json::array();
    Json counts = Json::array();
    std::int64_t time = micros(trace.begin);
    std::int64_t raw = 0;
    for (const RawChange& change : trace.changes) {
        times.push_back(micros(change.time) - std::exchange(time, micros(change.time)));
        counts.push_back(change.isNull ? Json(nullptr) : Json(change.raw - std::exchange(raw, change.raw)));
    }
    return {{"device", trace.device},      {"input", trace.input},     {"begin_us", micros(trace.begin)},
            {"end_us", micros(trace.end)}, {"reports", trace.reports}, {"steps_us", std::move(times)},
            {"steps", std::move(counts)}};
}

/// Reads members of a JSON object that may be anything; afterwards isGood() says whether all were there.
class Reader {
public:
    explicit Reader(const Json& object) : m_object(object), m_isGood(object.is_object()) {}

    [[nodiscard]] std::string text(const char* key) {
        const Json* found = find(key, &Json::is_string);
        return found ? found->get<std::string>() : std::string();
    }
    [[nodiscard]] std::int64_t integer(const char* key, std::int64_t lowest, std::int64_t highest) {
        const Json* found = find(key, &Json::is_number_integer);
        const std::int64_t number = found ? found->get<std::int64_t>() : lowest;
        m_isGood = m_isGood && number >= lowest && number <= highest;
        return number;
    }
    [[nodiscard]] bool boolean(const char* key) {
        const Json* found = find(key, &Json::is_boolean);
        return found && found->get<bool>();
    }
    [[nodiscard]] const Json& list(const char* key) {
        static const Json empty = Json::array();
        const Json* found = find(key, &Json::is_array);
        return found ? *found : empty;
    }
    [[nodiscard]] std::string object(const char* key) {
        const Json* found = find(key, &Json::is_object);
        return found ? found->dump() : std::string();
    }
    [[nodiscard]] bool isGood() const { return m_isGood; }

private:
    const Json* find(const char* key, bool (Json::*is)() const noexcept) {
        if (!m_isGood)
            return nullptr;
        const auto found = m_object.find(key);
        m_isGood = found != m_object.end() && ((*found).*is)();
        return m_isGood ? &*found : nullptr;
    }

    const Json& m_object;
    bool m_isGood;
};

/// Within 2^61, so that two of them can be added.
bool isSmall(const Json& number) {
    constexpr std::int64_t kMost = std::int64_t{1} << 61;
    return number.is_number_integer() &&
           (!number.is_number_unsigned() || number.get<std::uint64_t>() <= std::uint64_t(kMost)) &&
           number.get<std::int64_t>() >= -kMost && number.get<std::int64_t>() <= kMost;
}

std::optional<RawTrace> traceOf(const Json& json) {
    Reader reader(json);
    RawTrace trace;
    trace.device = reader.text("device");
    trace.input = reader.text("input");
    trace.begin = std::chrono::microseconds(reader.integer("begin_us", 0, kLongest));
    trace.end = std::chrono::microseconds(reader.integer("end_us", micros(trace.begin), kLongest));
    trace.reports = static_cast<std::uint64_t>(reader.integer("reports", 0, INT64_MAX));
    const Json& times = reader.list("steps_us");
    const Json& counts = reader.list("steps");
    if (!reader.isGood() || times.size() != counts.size())
        return std::nullopt;
    std::int64_t time = micros(trace.begin);
    std::int64_t raw = 0;
    for (std::size_t i = 0; i < times.size(); ++i) {
        if (!isSmall(times[i]) || (!counts[i].is_null() && !isSmall(counts[i])))
            return std::nullopt;
        time += times[i].get<std::int64_t>();
        raw += counts[i].is_null() ? 0 : counts[i].get<std::int64_t>();
        if (times[i].get<std::int64_t>() < 0 || time > micros(trace.end) || !isSmall(Json(raw)))
            return std::nullopt;
        trace.changes.push_back({std::chrono::microseconds(time), counts[i].is_null() ? 0 : raw, counts[i].is_null()});
    }
    return trace;
}

tl::unexpected<Error> damaged(const std::string& how) {
    return failure("damaged-evidence", "this line of evidence is damaged (" + how +
                                           ") and is left out; measure that control again, the other lines hold");
}

} // namespace

Result<std::string> evidenceLine(const EvidenceRecord& record) {
    Json result = Json::parse(record.result, nullptr, false);
    if (!result.is_object())
        return failure("bad-evidence", "the result of '" + record.kind + "' is no JSON object");
    Json raw = Json::array();
    for (const RawTrace& trace : record.raw)
        raw.push_back(jsonOf(trace));
    const Json json{{"format", kFormat},         {"kind", record.kind},         {"date", dateText(record.unixSeconds)},
                    {"control", record.control}, {"signals", record.signals},   {"fingerprint", record.fingerprint},
                    {"good", record.isGood},     {"result", std::move(result)}, {"raw", std::move(raw)}};
    std::string body = json.dump(-1, ' ', false, Json::error_handler_t::replace);
    body.pop_back(); // the closing brace: the checksum is the last member, of everything before it
    const std::string sum = sumOf(body);
    return body.append(kSumKey).append(sum).append("\"}");
}

Result<EvidenceRecord> parseEvidenceLine(std::string_view line) {
    const std::size_t tail = kSumKey.size() + kSumDigits + 2;
    const std::size_t end = line.size() < tail ? 0 : line.size() - tail;
    const std::string_view body = line.substr(0, end);
    if (line.substr(end) != std::string(kSumKey) + sumOf(body) + "\"}")
        return damaged("its checksum does not fit");
    const Json json = Json::parse(line, nullptr, false);
    Reader reader(json);
    const std::int64_t format = reader.integer("format", 1, INT64_MAX);
    if (reader.isGood() && format != kFormat)
        return failure("newer-evidence", "this line of evidence has format " + std::to_string(format) +
                                             ", of a newer program; this one reads format 1 and leaves it alone");
    EvidenceRecord record;
    record.kind = reader.text("kind");
    const std::optional<std::int64_t> date = parseDate(reader.text("date"));
    record.unixSeconds = date.value_or(0);
    record.control = reader.text("control");
    for (const Json& signal : reader.list("signals")) {
        if (!signal.is_string())
            return damaged("'signals' is no list of names");
        record.signals.push_back(signal.get<std::string>());
    }
    record.fingerprint = reader.text("fingerprint");
    record.isGood = reader.boolean("good");
    record.result = reader.object("result");
    for (const Json& item : reader.list("raw")) {
        std::optional<RawTrace> trace = traceOf(item);
        if (!trace)
            return damaged("its raw data cannot be read");
        record.raw.push_back(std::move(*trace));
    }
    if (!reader.isGood() || !date)
        return damaged("a member is missing or of another kind");
    return record;
}

} // namespace flowhand
