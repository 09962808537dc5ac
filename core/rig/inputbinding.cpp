#include "rig/inputbinding.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

std::string_view wordOf(InputKind kind) {
    switch (kind) {
    case InputKind::Axis:
        return "an axis";
    case InputKind::Button:
        return "a button";
    case InputKind::Hat:
        return "a hat";
    case InputKind::Relative:
        break;
    }
    return "a relative input";
}

InputKind kindFor(const InputRef& ref) {
    switch (ref.use) {
    case InputUse::Contact:
        return ref.hatDirection ? InputKind::Hat : InputKind::Button;
    case InputUse::Hat:
        return InputKind::Hat;
    case InputUse::Turns:
        return InputKind::Relative;
    case InputUse::Axis:
        break;
    }
    return InputKind::Axis;
}

/// "X, Y, hat 1, button 1 to button 16": buttons that follow each other in one go.
std::string offerOf(const std::vector<InputInfo>& inputs) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        std::size_t last = i;
        while (inputs[i].kind == InputKind::Button && last + 1 < inputs.size() &&
               inputs[last + 1].kind == InputKind::Button)
            ++last;
        words.push_back(last - i < 2 ? inputs[i].name : inputs[i].name + " to " + inputs[last].name);
        i = last - i < 2 ? i : last;
    }
    return words.empty() ? "no inputs" : joined(words, ", ");
}

} // namespace

std::optional<std::size_t> findInput(const InputRef& ref, const std::vector<InputInfo>& inputs) {
    const auto found = std::find_if(inputs.begin(), inputs.end(), [&](const InputInfo& input) {
        return input.name == ref.name;
    });
    return found == inputs.end() ? std::nullopt : std::optional(static_cast<std::size_t>(found - inputs.begin()));
}

Result<std::size_t> bindInput(const InputRef& ref, const std::string& deviceName,
                              const std::vector<InputInfo>& inputs) {
    const std::optional<std::size_t> found = findInput(ref, inputs);
    if (!found)
        return failure("unknown-input",
                       "the device '" + deviceName + "' has no input '" + ref.name + "'; it has " + offerOf(inputs),
                       ref.place);
    const InputInfo& input = inputs[*found];
    const InputKind wanted = kindFor(ref);
    if (input.kind != wanted)
        return failure("wrong-input-kind",
                       "'" + ref.name + "' of '" + deviceName + "' is " + std::string(wordOf(input.kind)) +
                           ", and this wiring needs " + std::string(wordOf(wanted)) + "; the device has " +
                           offerOf(inputs),
                       ref.place);
    if (ref.raws && (ref.raws->first < input.lowest || ref.raws->second > input.highest))
        return failure("range-outside-device",
                       "the counts " + std::to_string(ref.raws->first) + " to " + std::to_string(ref.raws->second) +
                           " are expected here, but '" + ref.name + "' of '" + deviceName + "' sends " +
                           std::to_string(input.lowest) + " to " + std::to_string(input.highest) +
                           "; write down anew what 'flowhand devices --watch' shows at both ends",
                       ref.place);
    return *found;
}

} // namespace flowhand
