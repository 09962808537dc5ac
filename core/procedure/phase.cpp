#include "procedure/phase.h"

namespace flowhand {

const std::vector<Phase>& phases() {
    static const std::vector<Phase> all = {
        {"gate", phrase("Gate"), 0.0},       {"taxi_out", phrase("Taxi out"), 0.0},
        {"line_up", phrase("Line-up"), 0.0}, {"take_off", phrase("Take-off"), 0.3},
        {"climb", phrase("Climb"), 1.0},     {"cruise", phrase("Cruise"), 1.0},
        {"descent", phrase("Descent"), 0.6}, {"approach", phrase("Approach"), 0.2},
        {"landing", phrase("Landing"), 0.0}, {"taxi_in", phrase("Taxi in"), 0.0},
        {"gate_in", phrase("Gate"), 0.0},
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
