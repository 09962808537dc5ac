// A lever made of contacts along its way: which of them it closes says in which zone it stands. After the debouncing
// (contacts.cpp):
//
//   #  closed contacts                                       the signal gets
//   1  some not reported yet                                 unknown
//   2  just those of a zone                                  the zone's value, at once
//   3  none, and no zone is so                               between: the lever is between two contacts
//   4  others, for less than `transit`                       between: it closes one before it leaves the other
//   5  others, for longer                                    unknown, and a fault
//
// `between` is for signals with positions; a number or an on/off keeps its value in transit.
#include <algorithm>

#include "rig/contactscontrol.h"
#include "rig/controls.h"

namespace flowhand {

namespace {

constexpr Duration kZoneTransit = std::chrono::milliseconds(500);

struct Zone {
    std::vector<bool> closed; ///< by slot
    Value value;
};

class Zones final : public ContactsControl {
public:
    Zones(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs, std::vector<Zone> zones,
          bool hasBetween, Duration transit, Duration debounce)
        : ContactsControl(std::move(name), std::move(signals), std::move(inputs), debounce), m_zones(std::move(zones)),
          m_hasBetween(hasBetween), m_transit(transit) {}

    void wish(std::size_t, Value value, std::vector<InputWish>& wishes) const override {
        const auto zone = std::find_if(m_zones.begin(), m_zones.end(), [&](const Zone& candidate) {
            return candidate.value == value;
        });
        for (std::size_t slot = 0; zone != m_zones.end() && slot < inputs().size(); ++slot)
            wishes.push_back({slot, zone->closed[slot] ? 1 : 0, {}});
    }

private:
    void changed(bool, Time time, Outputs& outputs) override {
        setTimer(kForever);
        setFault({});
        const auto zone = std::find_if(m_zones.begin(), m_zones.end(), [&](const Zone& candidate) {
            return isIn(candidate);
        });
        if (zone != m_zones.end()) {
            outputs.push_back({0, zone->value, time});
            return;
        }
        if (m_hasBetween)
            outputs.push_back({0, Value::between(), time});
        if (contacts().closedCount() > 0)
            setTimer(time + m_transit);
    }

    void timeUp(Time time, Outputs& outputs) override {
        setFault(
            phrase("no zone has just these closed: {1}; a contact sticks, or a zone is missing").with(closedNames()));
        outputs.push_back({0, Value::unknown(), time, Actor::Machine});
    }

    [[nodiscard]] bool isIn(const Zone& zone) const {
        for (std::size_t slot = 0; slot < contacts().count(); ++slot)
            if (contacts().isClosed(slot) != zone.closed[slot])
                return false;
        return true;
    }

    std::vector<Zone> m_zones;
    bool m_hasBetween;
    Duration m_transit;
};

} // namespace

std::unique_ptr<Control> readZones(ControlReader& reader) {
    std::vector<InputRef> inputs = reader.inputs("input", InputUse::Contact, 1, 16);
    std::vector<Zone> zones;
    for (const TomlNode* table : reader.toml().tables("zones")) {
        TomlReader entry(reader.toml().file(), *table, "a zone of '" + reader.name() + "'", reader.toml().problems());
        Zone zone;
        zone.closed.resize(inputs.size());
        for (const std::string& name : entry.texts("closed")) {
            const InputRef wanted = reader.inputNamed(name, entry.placeOf("closed"), InputUse::Contact);
            const auto found = std::find_if(inputs.begin(), inputs.end(), [&](const InputRef& input) {
                return input.device == wanted.device && input.name == wanted.name &&
                       input.hatDirection == wanted.hatDirection;
            });
            if (found == inputs.end())
                reader.error("unknown-input", "'" + name + "' is not in this control's list 'input'",
                             entry.placeOf("closed"));
            else
                zone.closed[static_cast<std::size_t>(found - inputs.begin())] = true;
        }
        const std::string value = entry.requiredText("value");
        zone.value = reader.valueOf(value, entry.placeOf("value"));
        entry.finish();
        for (const Zone& other : zones)
            if (other.closed == zone.closed)
                reader.error("zone-twice", "another zone has the same contacts closed", table->place);
        zones.push_back(std::move(zone));
    }
    if (zones.size() < 2)
        reader.error("missing-key", "'" + reader.name() + "' needs 'zones', two or more, each with closed and value",
                     "zones");
    return std::make_unique<Zones>(reader.name(), reader.signalIds(), std::move(inputs), std::move(zones),
                                   reader.signal().kind == SignalKind::Position,
                                   reader.duration("transit", kZoneTransit), reader.duration("debounce", kDebounce));
}

} // namespace flowhand
