#include <algorithm>
#include <utility>

#include "base/names.h"
#include "bench/benchjob.h"
#include "bench/filterchange.h"
#include "bench/listtext.h"

namespace flowhand {

namespace {

using Written = Result<std::vector<std::string>>;

/// The control of the rig that makes `signal`.
Result<std::size_t> controlOf(SignalId signal, const BenchTaskScope& scope) {
    const auto& controls = scope.rig.rig.controls;
    const auto found = std::find_if(controls.begin(), controls.end(), [signal](const auto& control) {
        const std::vector<SignalId>& signals = control->signals();
        return std::find(signals.begin(), signals.end(), signal) != signals.end();
    });
    if (found == controls.end())
        return failure("not-wired", "it is not wired yet, so it has no filters", {scope.rig.file});
    return static_cast<std::size_t>(found - controls.begin());
}

std::vector<std::string> toldKeys(const std::string& first, const std::vector<RigKey>& keys) {
    std::vector<std::string> words;
    for (const RigKey& key : keys)
        words.push_back(keyText(key));
    return {first + ": " + joined(words, ", ") + "."};
}

Written apply(SignalId signal, const BenchTaskScope& scope) {
    const Result<std::size_t> control = controlOf(signal, scope);
    if (!control)
        return tl::unexpected<Error>(control.error());
    for (const ControlFilters& filters : filtersOf(scope.rig, scope.aircraft, scope.flows)) {
        if (filters.signal != signal || filters.change.empty())
            continue;
        if (const Status applied =
                applyFilters(scope.rig.file, scope.rig.rig, scope.aircraft, {{*control, filters.change}});
            !applied)
            return tl::unexpected<Error>(applied.error());
        return toldKeys("Written into the rig file", filters.change);
    }
    return failure("nothing-to-apply", "no measurement of it asks for another filter; measure its signal first");
}

Written undo(SignalId signal, const BenchTaskScope& scope) {
    const Result<std::size_t> control = controlOf(signal, scope);
    if (!control)
        return tl::unexpected<Error>(control.error());
    const Result<std::vector<ControlKeys>> undone =
        undoFilters(scope.rig.file, scope.rig.rig, scope.aircraft, scope.rig.evidence, {*control});
    if (!undone)
        return tl::unexpected<Error>(undone.error());
    return toldKeys("Taken back; the rig file says again", undone->front().keys);
}

Written tolerate(const std::string& words, const BenchTaskScope& scope) {
    if (!scope.rig.isThere)
        return failure("no-rig", "wire a control first; then there is a rig file for the tolerances");
    std::vector<std::string> parts = parted(words, ',');
    if (parts.size() != 3)
        return failure("bad-tolerance",
                       "a tolerance is a number and its unit, as in 2.5 deg, with a point and no comma");
    const Result<WalkTolerances> tolerances = parseTolerances(parts[0], parts[1], parts[2]);
    if (!tolerances)
        return tl::unexpected<Error>(tolerances.error());
    const Result<std::string> source = withTolerances(scope.rig.rig.source, *tolerances);
    if (!source)
        return tl::unexpected<Error>(source.error());
    if (const Status saved =
            saveRigFile(scope.rig.file, *source, scope.aircraft.signals, scope.aircraft.controls.size());
        !saved)
        return tl::unexpected<Error>(saved.error());
    return std::vector<std::string>{"The tolerances of the check walk are written into the rig file."};
}

} // namespace

Result<std::vector<std::string>> changeRig(const BenchWish& wish, const BenchTaskScope& scope) {
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
