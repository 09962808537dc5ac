#include "rig/tolerances.h"

#include <cstdio>

#include "base/signal.h"
#include "rig/rigedit.h"

namespace flowhand {

namespace {

constexpr const char* kTable = "tolerances";

struct Asked {
    const char* key;
    const char* symbol; ///< of its unit
    double least;
    double most;
};
constexpr Asked kSteering = {"steering", "deg", kLeastToleranceDegrees, kMostToleranceDegrees};
constexpr Asked kLever = {"lever", "deg", kLeastToleranceDegrees, kMostToleranceDegrees};
constexpr Asked kTravel = {"travel", "%", kLeastTolerancePercent, kMostTolerancePercent};

/// "2.5 deg", as a rig file has it.
std::string exact(double value, const Asked& asked) {
    char text[40];
    std::snprintf(text, sizeof text, "%.10g ", value); // finer than any lever is measured
    return text + std::string(asked.symbol);
}

Result<double> parse(std::string_view text, const Asked& asked) {
    Signal signal;
    signal.name = asked.key;
    signal.unit = *findUnit(asked.symbol);
    const Result<Value> value = parseValue(signal, text);
    if (!value)
        return tl::unexpected<Error>(value.error());
    if (value->number() < asked.least || value->number() > asked.most)
        return failure("bad-value", "the tolerance '" + std::string(asked.key) + "' is from " +
                                        exact(asked.least, asked) + " to " + exact(asked.most, asked) + ", not " +
                                        exact(value->number(), asked));
    return value->number();
}

void read(TomlReader& table, const Asked& asked, double& into, double parts = 1.0) {
    const std::optional<std::string> text = table.text(asked.key);
    if (!text)
        return;
    const Result<double> value = parse(*text, asked);
    if (value)
        into = *value / parts;
    else
        table.problems().error(value.error().code, value.error().message, table.placeOf(asked.key));
}

/// Empty for what is as without it.
RigKey keyFor(const Asked& asked, double value, double missing) {
    return {asked.key, value == missing ? std::string() : '"' + exact(value, asked) + '"'};
}

} // namespace

WalkTolerances readTolerances(TomlReader& rig) {
    WalkTolerances tolerances;
    const TomlNode* node = rig.table(kTable);
    if (node == nullptr)
        return tolerances;
    TomlReader table(rig.file(), *node, "the tolerances", rig.problems());
    read(table, kSteering, tolerances.steeringDegrees);
    read(table, kLever, tolerances.leverDegrees);
    read(table, kTravel, tolerances.leverShare, 100.0);
    table.finish();
    return tolerances;
}

Result<WalkTolerances> parseTolerances(std::string_view steering, std::string_view lever, std::string_view travel) {
    const Result<double> ofSteering = parse(steering, kSteering);
    if (!ofSteering)
        return tl::unexpected<Error>(ofSteering.error());
    const Result<double> ofLever = parse(lever, kLever);
    if (!ofLever)
        return tl::unexpected<Error>(ofLever.error());
    const Result<double> ofTravel = parse(travel, kTravel);
    if (!ofTravel)
        return tl::unexpected<Error>(ofTravel.error());
    return WalkTolerances{*ofSteering, *ofLever, *ofTravel / 100.0};
}

Result<std::string> withTolerances(std::string source, const WalkTolerances& tolerances) {
    const WalkTolerances missing;
    return withTableKeys(std::move(source), kTable,
                         {keyFor(kTravel, tolerances.leverShare * 100.0, missing.leverShare * 100.0),
                          keyFor(kLever, tolerances.leverDegrees, missing.leverDegrees),
                          keyFor(kSteering, tolerances.steeringDegrees, missing.steeringDegrees)});
}

} // namespace flowhand
