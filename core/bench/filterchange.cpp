#include "bench/filterchange.h"

#include <algorithm>
#include <utility>

#include <nlohmann/json.hpp>

#include "bench/measure.h"
#include "bench/measured.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

Json jsonOf(const std::vector<RigKey>& keys) {
    Json json = Json::object();
    for (const RigKey& key : keys)
        json[key.key] = key.value.empty() ? Json(nullptr) : Json(key.value);
    return json;
}

std::vector<RigKey> keysOf(const Json& json) {
    std::vector<RigKey> keys;
    for (const auto& [key, value] : json.items())
        keys.push_back({key, value.is_null() ? std::string() : value.get<std::string>()});
    return keys;
}

std::vector<std::string> namesOf(const std::vector<RigKey>& keys) {
    std::vector<std::string> names;
    for (const RigKey& key : keys)
        names.push_back(key.key);
    return names;
}

bool areOf(const EvidenceRecord& record, const ControlFingerprint& control) {
    return std::any_of(record.signals.begin(), record.signals.end(), [&](const std::string& signal) {
        return std::find(control.signals.begin(), control.signals.end(), signal) != control.signals.end();
    });
}

/// One change, and whether it took another one back.
struct Kept {
    FilterChange change;
    bool isUndo = false;
};

std::optional<Kept> keptIn(const EvidenceRecord& record) {
    try {
        const Json json = Json::parse(record.result);
        Kept kept{{record.unixSeconds, keysOf(json.at("before")), keysOf(json.at("after"))},
                  json.at("undo").get<bool>()};
        const bool isWhole = namesOf(kept.change.before) == namesOf(kept.change.after);
        return isWhole ? std::optional(std::move(kept)) : std::nullopt;
    } catch (const Json::exception&) {
        return std::nullopt; // nothing to be taken back can be read from it
    }
}

/// Writes the keys and keeps what they replaced.
Status change(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
              const std::vector<ControlKeys>& changes, bool isUndo) {
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(rig, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    std::vector<EvidenceRecord> records;
    for (const ControlKeys& control : changes) {
        const Result<std::vector<RigKey>> before = controlKeysIn(rig.source, control.control, namesOf(control.keys));
        if (!before)
            return tl::unexpected<Error>(before.error());
        EvidenceRecord record = evidenceAbout((*fingerprints)[control.control], kFilterEvidence);
        record.isGood = true;
        record.unixSeconds = records.empty() ? record.unixSeconds : records.front().unixSeconds; // one change, one time
        record.result = Json{{"undo", isUndo}, {"before", jsonOf(*before)}, {"after", jsonOf(control.keys)}}.dump();
        records.push_back(std::move(record));
    }
    const Result<std::string> saved = saveKeys(rigFile, rig, aircraft, changes);
    if (!saved)
        return tl::unexpected<Error>(saved.error());
    for (const EvidenceRecord& record : records)
        if (const Status kept = appendEvidence(evidenceFileOf(rigFile), record); !kept)
            return kept;
    return {};
}

} // namespace

Result<FilterAdvice> filterAdviceOf(const EvidenceRecord& record) {
    try {
        const Json json = Json::parse(record.result).at("filters");
        FilterAdvice advice;
        advice.delay = fromSeconds(json.at("delay_ms").get<double>() / 1000);
        advice.allowed = fromSeconds(json.at("allowed_ms").get<double>() / 1000);
        advice.noise = json.at("noise").get<double>();
        advice.keys = keysOf(json.at("keys"));
        advice.findings = findingsIn(json.dump());
        return advice;
    } catch (const Json::exception& problem) {
        return failure("damaged-evidence", "what the measurement of '" + record.control + "' at " +
                                               dateText(record.unixSeconds) + " says of its filters cannot be read (" +
                                               problem.what() + "); measure it again");
    }
}

Result<std::vector<RigKey>> openKeys(const std::string& source, std::size_t control, const std::vector<RigKey>& keys) {
    const Result<std::vector<RigKey>> now = controlKeysIn(source, control, namesOf(keys));
    if (!now)
        return tl::unexpected<Error>(now.error());
    std::vector<RigKey> open;
    for (std::size_t i = 0; i < keys.size(); ++i)
        if ((*now)[i].value != keys[i].value)
            open.push_back(keys[i]);
    return open;
}

Phrase keyText(const RigKey& key) {
    return key.value.empty() ? phrase("no {1}").with(key.key) : Phrase(key.key + " = " + key.value);
}

std::optional<FilterChange> lastFilterChange(const std::vector<EvidenceRecord>& evidence,
                                             const ControlFingerprint& control) {
    std::vector<FilterChange> standing;
    for (const EvidenceRecord& record : evidence) {
        if (record.kind != kFilterEvidence || !areOf(record, control))
            continue;
        std::optional<Kept> kept = keptIn(record);
        if (kept && !kept->isUndo)
            standing.push_back(std::move(kept->change));
        else if (kept && !standing.empty())
            standing.pop_back();
    }
    return standing.empty() ? std::nullopt : std::optional(standing.back());
}

Status applyFilters(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                    const std::vector<ControlKeys>& filters) {
    return change(rigFile, rig, aircraft, filters, false);
}

BenchResult<std::vector<ControlKeys>> undoFilters(const std::string& rigFile, const RigFile& rig,
                                                  const Aircraft& aircraft, const std::vector<EvidenceRecord>& evidence,
                                                  const std::vector<std::size_t>& controls) {
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(rig, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    std::vector<ControlKeys> changes;
    for (const std::size_t control : controls) {
        const std::string& name = rig.controls[control]->name();
        const std::optional<FilterChange> last = lastFilterChange(evidence, (*fingerprints)[control]);
        if (!last)
            return benchFailure("nothing-to-undo",
                                phrase("no filters of '{1}' were written that could be taken back").with(name),
                                {rigFile});
        const Result<std::vector<RigKey>> changed = openKeys(rig.source, control, last->after);
        if (!changed)
            return tl::unexpected<Error>(changed.error());
        if (!changed->empty())
            return benchFailure("filters-changed",
                                phrase("'{1}' of '{2}' has been changed since; write yourself what it was before: {3}")
                                    .with(changed->front().key, name,
                                          keyText(*std::find_if(last->before.begin(), last->before.end(),
                                                                [&](const RigKey& key) {
                                                                    return key.key == changed->front().key;
                                                                }))),
                                {rigFile});
        changes.push_back({control, last->before});
    }
    if (changes.empty())
        return benchFailure("nothing-to-undo", phrase("no filters were written that could be taken back"), {rigFile});
    if (const Status undone = change(rigFile, rig, aircraft, changes, true); !undone)
        return tl::unexpected<Error>(undone.error());
    return changes;
}

std::vector<std::size_t> lastChangedControls(const std::vector<EvidenceRecord>& evidence,
                                             const std::vector<ControlFingerprint>& controls) {
    std::vector<std::size_t> newest;
    std::int64_t at = 0;
    for (std::size_t i = 0; i < controls.size(); ++i) {
        const std::optional<FilterChange> last = lastFilterChange(evidence, controls[i]);
        if (!last || last->unixSeconds < at)
            continue;
        if (last->unixSeconds > at)
            newest.clear();
        at = last->unixSeconds;
        newest.push_back(i);
    }
    return newest;
}

} // namespace flowhand
