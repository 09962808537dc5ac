#include "paint/laneink.h"

#include "presenter/verdict.h"

namespace flowhand {

QColor LaneInk::ofVerdict(int verdict) const {
    switch (static_cast<Verdict::Kind>(verdict)) {
    case Verdict::Done:
        return done;
    case Verdict::Late:
        return late;
    case Verdict::Wrong:
    case Verdict::OutOfOrder:
        return wrong;
    case Verdict::Unsure:
        return unsure;
    case Verdict::Info:
        return info;
    case Verdict::Due:
        return accent;
    case Verdict::Waiting:
    case Verdict::LeftOut:
        break;
    }
    return quiet;
}

QFont LaneInk::font() const {
    QFont font(family);
    font.setPixelSize(size);
    return font;
}

} // namespace flowhand
