#pragma once

#include <cstddef>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/tomlfile.h"
#include "procedure/flow.h"

namespace flowhand {

/// Makes the order of a flow's steps: each comes after the one before it, unless its group or its `after` says
/// otherwise. Lives while a file is read.
class StepOrder {
public:
    /// Fills in `group` and `after` of `step`, which will be number `index`, from its table.
    void place(TomlReader& reader, Step& step, std::size_t index);
    /// The step or, of a group, all its steps, that are called so.
    [[nodiscard]] const std::vector<std::size_t>* find(const std::string& name) const;
    /// For an id that is not there: the nearest one.
    [[nodiscard]] std::string hint(const std::string& name) const;

private:
    std::vector<std::size_t> named(TomlReader& reader);
    void enter(TomlReader& reader, const Step& step, std::size_t index);

    std::unordered_map<std::string, std::vector<std::size_t>> m_byName;
    std::unordered_map<std::string, bool> m_isGroup;
    std::vector<std::string> m_names;
    std::vector<std::size_t> m_last; ///< what the next step comes after
    std::vector<std::size_t> m_base; ///< what the running group comes after
    std::string m_group;
};

} // namespace flowhand
