#include "procedure/steporder.h"

#include <utility>

#include "base/names.h"
#include "procedure/fileformat.h"

namespace flowhand {

namespace {

/// Each step after a group lists the whole group; people keep far fewer apart.
constexpr std::size_t kMostInGroup = 100;

} // namespace

void StepOrder::place(TomlReader& reader, Step& step, std::size_t index) {
    step.group = reader.text("group").value_or("");
    const bool goesOn = !step.group.empty() && step.group == m_group;
    if (!goesOn && !step.group.empty() && m_isGroup.count(step.group) != 0)
        reader.problems().error("split-group",
                                "group '" + step.group + "' has ended before; its steps must follow each other",
                                reader.placeOf("group"));
    const bool isSaid = reader.node("after") != nullptr;
    std::vector<std::size_t> after = isSaid ? named(reader) : goesOn ? m_base : m_last;
    if (!goesOn) {
        m_base = after;
        m_last.clear();
    }
    m_last.push_back(index);
    if (goesOn && m_last.size() > kMostInGroup) {
        reader.problems().error("too-many", "group '" + step.group + "' has more than 100 steps",
                                reader.placeOf("group"));
        m_last.pop_back();
    }
    m_group = step.group;
    step.after = std::move(after);
    enter(reader, step, index);
}

std::vector<std::size_t> StepOrder::named(TomlReader& reader) {
    std::vector<std::size_t> indexes;
    for (const std::string& name : reader.texts("after")) {
        if (const std::vector<std::size_t>* found = find(name))
            indexes.insert(indexes.end(), found->begin(), found->end());
        else
            reader.problems().error("unknown-step",
                                    "no step or group before this one is called '" + name + "'" + hint(name),
                                    reader.placeOf("after"));
    }
    return indexes;
}

void StepOrder::enter(TomlReader& reader, const Step& step, std::size_t index) {
    if (step.id.empty())
        return;
    if (!isPlainName(step.id))
        reader.problems().error(
            "bad-name", "step '" + step.id + "' must be named with lower case letters, digits and '_', a letter first",
            reader.placeOf("id"));
    if (!m_byName.emplace(step.id, std::vector<std::size_t>{index}).second)
        reader.problems().error("duplicate-name", "the name '" + step.id + "' is used twice", reader.placeOf("id"));
    m_names.push_back(step.id);
    if (step.group.empty())
        return;
    if (m_byName.count(step.group) != 0 && m_isGroup.count(step.group) == 0)
        reader.problems().error("duplicate-name", "a step is called '" + step.group + "', so no group can be",
                                reader.placeOf("group"));
    m_isGroup.emplace(step.group, true);
    std::vector<std::size_t>& members = m_byName[step.group];
    if (members.size() < kMostInGroup)
        members.push_back(index);
}

const std::vector<std::size_t>* StepOrder::find(const std::string& name) const {
    const auto found = m_byName.find(name);
    return found == m_byName.end() ? nullptr : &found->second;
}

std::string StepOrder::hint(const std::string& name) const {
    return nearestHint(name, m_names);
}

} // namespace flowhand
