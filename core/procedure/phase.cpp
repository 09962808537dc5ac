#include "procedure/phase.h"

namespace flowhand {

const std::vector<Phase>& phases() {
    static const std::vector<Phase> all = {
        {"gate", "Gate", 0.0},         {"taxi_out", "Taxi out", 0.0}, {"line_up", "Line-up", 0.0},
        {"take_off", "Take-off", 0.3}, {"climb", "Climb", 1.0},       {"cruise", "Cruise", 1.0},
        {"descent", "Descent", 0.6},   {"approach", "Approach", 0.2}, {"landing", "Landing", 0.0},
        {"taxi_in", "Taxi in", 0.0},   {"gate_in", "Gate", 0.0},
    };
    return all;
}

std::optional<std::size_t> findPhase(std::string_view id) {
    for (std::size_t i = 0; i < phases().size(); ++i)
        if (phases()[i].id == id)
            return i;
    return std::nullopt;
}

} // namespace flowhand
