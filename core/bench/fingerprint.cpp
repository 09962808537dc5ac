#include "bench/fingerprint.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>

#include "base/sha256.h"
#include "base/tomlfile.h"

namespace flowhand {

namespace {

/// Keys of a [[control]] that are neither wiring nor calibration: what it is called, and the filters, which follow from
/// a measurement and may be set after it.
constexpr std::array<std::string_view, 9> kLeftOut = {"name",   "noise",  "least_change", "spike_limit", "settle",
                                                      "median", "smooth", "hysteresis",   "debounce"};

void add(Sha256& hash, std::string_view tag, std::string_view text) {
    hash.add(tag);
    hash.add(std::to_string(text.size()));
    hash.add(":");
    hash.add(text);
}

/// Every value has one form, whatever its spelling: keys in alphabetical order, 1.0 as 1.
void add(Sha256& hash, const TomlNode& node) {
    std::array<char, 40> number{};
    switch (node.kind) {
    case TomlNode::Kind::Text:
        return add(hash, "t", node.text);
    case TomlNode::Kind::Boolean:
        return hash.add(node.boolean ? "yes;" : "no;");
    case TomlNode::Kind::Integer:
        return hash.add("n" + std::to_string(node.integer) + ";");
    case TomlNode::Kind::Float:
        std::snprintf(number.data(), number.size(), "n%.17g;", node.real);
        return hash.add(number.data());
    case TomlNode::Kind::Array:
        hash.add("[");
        for (const TomlNode& item : node.items)
            add(hash, item);
        return hash.add("]");
    case TomlNode::Kind::Table: {
        std::vector<const TomlMember*> members;
        for (const TomlMember& member : node.members)
            members.push_back(&member);
        std::sort(members.begin(), members.end(), [](const TomlMember* a, const TomlMember* b) {
            return a->first < b->first;
        });
        hash.add("{");
        for (const TomlMember* member : members) {
            add(hash, "k", member->first);
            add(hash, member->second);
        }
        return hash.add("}");
    }
    case TomlNode::Kind::Other:
        break; // dates: no rig file that was read has one
    }
}

std::string hashOf(TomlNode table, const Control& control, const std::vector<DeviceWish>& devices) {
    table.members.erase(std::remove_if(table.members.begin(), table.members.end(),
                                       [](const TomlMember& member) {
                                           return std::find(kLeftOut.begin(), kLeftOut.end(), member.first) !=
                                                  kLeftOut.end();
                                       }),
                        table.members.end());
    Sha256 hash;
    add(hash, table);
    std::set<DeviceIndex> used;
    for (const InputRef& input : control.inputs())
        used.insert(input.device);
    for (const DeviceIndex index : used) {
        const DeviceWish& device = devices[index];
        hash.add("d" + std::to_string(device.vendor) + ":" + std::to_string(device.product) + ";");
        add(hash, "s", device.serial);
        add(hash, "p", device.port);
    }
    return hash.hex();
}

} // namespace

Result<std::vector<ControlFingerprint>> fingerprintsOf(const RigFile& rig, const SignalTable& signals) {
    if (rig.controls.empty())
        return std::vector<ControlFingerprint>();
    const Result<TomlFile> toml = TomlFile::parse(rig.source, {});
    if (!toml)
        return tl::unexpected(toml.error());
    const TomlNode* tables = toml->root().find("control");
    if (tables == nullptr || tables->items.size() != rig.controls.size())
        return failure("other-rig", "this rig's text and its controls do not belong together");
    std::vector<ControlFingerprint> fingerprints;
    for (std::size_t i = 0; i < rig.controls.size(); ++i) {
        const Control& control = *rig.controls[i];
        ControlFingerprint fingerprint;
        fingerprint.control = control.name();
        for (const SignalId id : control.signals())
            fingerprint.signals.push_back(signals[id].name);
        fingerprint.hash = hashOf(tables->items[i], control, rig.devices);
        fingerprints.push_back(std::move(fingerprint));
    }
    return fingerprints;
}

} // namespace flowhand
