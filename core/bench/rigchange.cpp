#include <algorithm>
#include <utility>

#include "bench/benchjob.h"
#include "bench/filterchange.h"
#include "bench/listtext.h"

namespace flowhand {

namespace {

using Written = BenchResult<std::vector<Phrase>>;

/// The control of the rig that makes `signal`.
BenchResult<std::size_t> controlOf(SignalId signal, const BenchTaskScope& scope) {
    const auto& controls = scope.rig.rig.controls;
    const auto found = std::find_if(controls.begin(), controls.end(), [signal](const auto& control) {
        const std::vector<SignalId>& signals = control->signals();
        return std::find(signals.begin(), signals.end(), signal) != signals.end();
    });
    if (found == controls.end())
        return benchFailure("not-wired", phrase("it is not wired yet, so it has no filters"), {scope.rig.file});
    return static_cast<std::size_t>(found - controls.begin());
}

/// With {1} for the keys.
std::vector<Phrase> toldKeys(Phrase sentence, const std::vector<RigKey>& keys) {
    std::vector<Phrase> words;
    for (const RigKey& key : keys)
        words.push_back(keyText(key));
    return {std::move(sentence).with(joined(words, ", "))};
}

Written apply(SignalId signal, const BenchTaskScope& scope) {
    const BenchResult<std::size_t> control = controlOf(signal, scope);
    if (!control)
        return tl::unexpected(control.error());
    for (const ControlFilters& filters : filtersOf(scope.rig, scope.aircraft, scope.flows)) {
        if (filters.signal != signal || filters.change.empty())
            continue;
        if (const Status applied =
                applyFilters(scope.rig.file, scope.rig.rig, scope.aircraft, {{*control, filters.change}});
            !applied)
            return tl::unexpected<BenchError>(applied.error());
        return toldKeys(phrase("Written into the rig file: {1}."), filters.change);
    }
    return benchFailure("nothing-to-apply",
                        phrase("no measurement of it asks for another filter; measure its signal first"));
}

Written undo(SignalId signal, const BenchTaskScope& scope) {
    const BenchResult<std::size_t> control = controlOf(signal, scope);
    if (!control)
        return tl::unexpected(control.error());
    const BenchResult<std::vector<ControlKeys>> undone =
        undoFilters(scope.rig.file, scope.rig.rig, scope.aircraft, scope.rig.evidence, {*control});
    if (!undone)
        return tl::unexpected(undone.error());
    return toldKeys(phrase("Taken back; the rig file says again: {1}."), undone->front().keys);
}

Phrase unreadTolerance() {
    return phrase("a tolerance is a number and its unit, as in 2.5 deg, with a point and no comma");
}

Written tolerate(const std::string& words, const BenchTaskScope& scope) {
    if (!scope.rig.isThere)
        return benchFailure("no-rig", phrase("wire a control first; then there is a rig file for the tolerances"));
    std::vector<std::string> parts = parted(words, ',');
    if (parts.size() != 3)
        return benchFailure("bad-tolerance", unreadTolerance());
    const Result<WalkTolerances> tolerances = parseTolerances(parts[0], parts[1], parts[2]);
    if (!tolerances)
        return tl::unexpected<BenchError>({tolerances.error(), unreadTolerance()});
    const Result<std::string> source = withTolerances(scope.rig.rig.source, *tolerances);
    if (!source)
        return tl::unexpected<BenchError>(source.error());
    if (const Status saved =
            saveRigFile(scope.rig.file, *source, scope.aircraft.signals, scope.aircraft.controls.size());
        !saved)
        return tl::unexpected<BenchError>(saved.error());
    return std::vector<Phrase>{phrase("The tolerances of the check walk are written into the rig file.")};
}

} // namespace

Written changeRig(const BenchWish& wish, const BenchTaskScope& scope) {
    switch (wish.task) {
    case BenchTask::ApplyFilters:
        return apply(wish.signal, scope);
    case BenchTask::UndoFilters:
        return undo(wish.signal, scope);
    default:
        return tolerate(wish.words, scope);
    }
}

} // namespace flowhand
