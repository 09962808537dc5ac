#include <cstdint>
#include <cstdlib>
#include <span>

#include "device/deviceclass.h"
#include "device/explain.h"
#include "device/inputs.h"

/// Any bytes are a descriptor, or refused.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace flowhand;
    const std::span<const std::uint8_t> bytes(data, size);
    for (const ExplainedItem& item : explainDescriptor(bytes))
        if (item.text.empty() || item.offset + item.bytes.size() > size)
            std::abort();
    const auto descriptor = parseDescriptor(bytes);
    if (!descriptor)
        return 0;
    (void)classOf(*descriptor);
    (void)isKeyboardOnly(*descriptor);
    const InputMap map = makeInputs(*descriptor);
    if (map.inputs.size() > kMostInputs || map.elements.size() != descriptor->elements.size())
        std::abort();
    for (const InputElement& element : descriptor->elements)
        if (element.collection >= static_cast<int>(descriptor->collections.size()) || element.size == 0 ||
            element.lowest > element.highest)
            std::abort();
    return 0;
}
