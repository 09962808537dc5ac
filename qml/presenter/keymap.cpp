#include "presenter/keymap.h"

#include <QStringList>
#include <Qt>

namespace flowhand {

const std::vector<KeyBinding>& keyBindings() {
    using enum KeyAction;
    static const std::vector<KeyBinding> bindings = {
        {Qt::Key_Q, "Q", {"thrust_lever_1"}, Raise},
        {Qt::Key_A, "A", {"thrust_lever_1"}, Lower},
        {Qt::Key_W, "W", {"thrust_lever_2"}, Raise},
        {Qt::Key_S, "S", {"thrust_lever_2"}, Lower},
        {Qt::Key_E, "E", {"thrust_lever_1", "thrust_lever_2"}, Raise},
        {Qt::Key_D, "D", {"thrust_lever_1", "thrust_lever_2"}, Lower},
        {Qt::Key_T, "T", {"reverse_lever_1"}, Raise},
        {Qt::Key_G, "G", {"reverse_lever_1"}, Lower},
        {Qt::Key_Y, "Y", {"reverse_lever_2"}, Raise},
        {Qt::Key_H, "H", {"reverse_lever_2"}, Lower},
        {Qt::Key_R, "R", {"reverse_lever_1", "reverse_lever_2"}, Raise},
        {Qt::Key_F, "F", {"reverse_lever_1", "reverse_lever_2"}, Lower},
        {Qt::Key_O, "O", {"flap_lever"}, Lower},
        {Qt::Key_L, "L", {"flap_lever"}, Raise},
        {Qt::Key_I, "I", {"gear_lever"}, Lower},
        {Qt::Key_K, "K", {"gear_lever"}, Raise},
        {Qt::Key_U, "U", {"spoiler_lever"}, Lower},
        {Qt::Key_J, "J", {"spoiler_lever"}, Raise},
        {Qt::Key_P, "P", {"parking_brake"}, Toggle},
        {Qt::Key_V, "V", {"toe_brake_left"}, Raise},
        {Qt::Key_N, "N", {"toe_brake_right"}, Raise},
        {Qt::Key_B, "B", {"toe_brake_left", "toe_brake_right"}, Raise},
        {Qt::Key_Comma, ",", {"rudder_pedals"}, Lower},
        {Qt::Key_Period, ".", {"rudder_pedals"}, Raise},
        {Qt::Key_Left, "←", {"tiller"}, Lower},
        {Qt::Key_Right, "→", {"tiller"}, Raise},
        {Qt::Key_Up, "↑", {"yoke_pitch"}, Lower},
        {Qt::Key_Down, "↓", {"yoke_pitch"}, Raise},
        {Qt::Key_1, "1", {"yoke_roll"}, Lower},
        {Qt::Key_2, "2", {"yoke_roll"}, Raise},
        {Qt::Key_3, "3", {"pitch_trim"}, Lower},
        {Qt::Key_4, "4", {"pitch_trim"}, Raise},
        {Qt::Key_5, "5", {"autobrake"}, Lower},
        {Qt::Key_6, "6", {"autobrake"}, Raise},
        {Qt::Key_X, "X", {"taxi_light"}, Toggle},
        {Qt::Key_C, "C", {"landing_lights"}, Toggle},
        {Qt::Key_F5, "F5", {"fuel_lever_1"}, Toggle},
        {Qt::Key_F6, "F6", {"fuel_lever_2"}, Toggle},
        {Qt::Key_M, "M", {"takeoff_button"}, Press},
        {Qt::Key_Space, "Space", {"reply_button"}, Press},
    };
    return bindings;
}

QString keysOf(const std::string& control) {
    QStringList shown;
    for (const KeyBinding& binding : keyBindings())
        if (binding.controls.size() == 1 && binding.controls.front() == control)
            shown.append(binding.shown);
    return shown.join(QLatin1Char(' '));
}

} // namespace flowhand
