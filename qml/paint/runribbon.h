#pragma once

#include "paint/lanepaint.h"

namespace flowhand {

/// The whole run as a line that rises where the aircraft flew, with a bead for each step and a mark for each loss, and
/// the stretch of it that the lanes show.
class RunRibbon : public flowhand::LanePaint { // its whole name, by which the QML tools find it
    Q_OBJECT
    QML_ELEMENT

public:
    using LanePaint::LanePaint;

protected:
    void paintLane(QPainter& painter) override;

private:
    [[nodiscard]] double acrossOf(Time time) const;
    [[nodiscard]] double yAt(Time time) const;
    void paintStretch(QPainter& painter) const;
    void paintLine(QPainter& painter) const;
    void paintBeads(QPainter& painter) const;
    void paintLosses(QPainter& painter) const;

    std::optional<SignalId> m_heightSignal;
    double m_highest = 0.0; ///< ft, that the aircraft flew; 0: it stayed on the ground
};

} // namespace flowhand
