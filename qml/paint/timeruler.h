#pragma once

#include "paint/lanepaint.h"

namespace flowhand {

/// The times of the stretch that is shown: a mark at every round one, as many as have room for their figures.
class TimeRuler : public flowhand::LanePaint { // its whole name, by which the QML tools find it
    Q_OBJECT
    QML_ELEMENT

public:
    using LanePaint::LanePaint;

    /// The least round period of which `most` lie in `width` at the most.
    [[nodiscard]] static Duration periodFor(Duration width, int most);

protected:
    void paintLane(QPainter& painter) override;
};

} // namespace flowhand
