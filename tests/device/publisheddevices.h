#pragma once

/// Descriptors printed in the appendices of the USB Device Class Definition for HID 1.11, as bytes of their items.
namespace published {

// Appendix B.1, boot keyboard; Appendix E.6 prints the same report descriptor, wDescriptorLength 003F.
inline constexpr const char* kKeyboard =
    "05 01 09 06 A1 01 05 07 19 E0 29 E7 15 00 25 01 75 01 95 08 81 02 95 01 75 08 81 01 95 05 75 01 05 08 19 01 "
    "29 05 91 02 95 01 75 03 91 01 95 06 75 08 15 00 25 65 05 07 19 00 29 65 81 00 C0";

// Appendix B.2, boot mouse; Appendix E.10 prints the same report descriptor, wDescriptorLength 0032.
inline constexpr const char* kMouse =
    "05 01 09 02 A1 01 09 01 A1 00 05 09 19 01 29 03 15 00 25 01 95 03 75 01 81 02 95 01 75 05 81 01 05 01 09 30 "
    "09 31 15 81 25 7F 75 08 95 02 81 06 C0 C0";

// Appendix D.1, joystick: throttle, stick, four-way hat, four buttons in 4 bytes. Bytes of the printed item text.
inline constexpr const char* kJoystick =
    "05 01 15 00 09 04 A1 01 05 02 09 BB 15 81 25 7F 75 08 95 01 81 02 05 01 09 01 A1 00 09 30 09 31 95 02 81 02 "
    "C0 09 39 15 00 25 03 35 00 46 0E 01 65 14 75 04 95 01 81 42 05 09 19 01 29 04 25 01 75 01 95 04 55 00 65 00 "
    "81 02 C0";

} // namespace published
