#pragma once

#include <vector>

#include "paint/lanepaint.h"

namespace flowhand {

/// A signal over the stretch that is shown, with what steps wanted of it while they were open, gaps as gaps. Drawn
/// from its lowest and highest values of each column of pixels: nothing that was ever there is left out.
class SignalPlot : public flowhand::LanePaint { // its whole name, by which the QML tools find it
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(int signalId MEMBER m_signal NOTIFY signalChanged)

public:
    explicit SignalPlot(QQuickItem* parent = nullptr);

Q_SIGNALS:
    void signalChanged();

protected:
    void paintLane(QPainter& painter) override;

private:
    /// What lies at the foot and the top of the item.
    struct Scale {
        double low = 0.0;
        double high = 1.0;
    };
    [[nodiscard]] SignalId id() const { return SignalId{static_cast<std::uint32_t>(m_signal)}; }
    [[nodiscard]] Scale scale() const;
    [[nodiscard]] double yOf(double value) const;
    void paintLimits(QPainter& painter) const;
    void paintLine(QPainter& painter) const;
    void paintEnds(QPainter& painter) const;

    int m_signal = 0;
    Scale m_scale; ///< of the picture that is being painted
};

} // namespace flowhand
