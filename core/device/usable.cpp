#include "device/usable.h"

#include "device/deviceclass.h"
#include "device/wishes.h"

namespace flowhand {

Result<ReportDecoder> decoderFor(std::span<const std::uint8_t> bytes, const DeviceWish& wish) {
    auto descriptor = parseDescriptor(bytes);
    if (!descriptor)
        return failure(descriptor.error().code, wishText(wish) + " cannot be used: " + descriptor.error().message,
                       wish.place);
    if (isKeyboardOnly(*descriptor))
        return failure("keyboard-card", wishText(wish) + " " + whyNoKeyboards(), wish.place);
    ReportDecoder decoder(std::move(*descriptor));
    if (decoder.inputs().empty())
        return failure("no-controls", wishText(wish) + " has no controls: its report descriptor names no inputs",
                       wish.place);
    return decoder;
}

Phrase fitRemark(const DeviceWish& wish, ReportFit fit) {
    switch (fit) {
    case ReportFit::Truncated:
        return phrase("{1} sends reports shorter than its descriptor says; what is missing changes nothing")
            .with(wishText(wish));
    case ReportFit::Overlong:
        return phrase("{1} sends reports longer than its descriptor says; the rest is ignored").with(wishText(wish));
    default:
        return phrase("{1} sends reports with an id that its descriptor does not have; they are ignored")
            .with(wishText(wish));
    }
}

} // namespace flowhand
