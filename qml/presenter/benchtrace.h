#pragma once

#include <deque>
#include <vector>

#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include "bench/workbench.h"

namespace flowhand {

/// The last seconds of the quantity that is judged of one control, with what is drawn beside it: the bands of the
/// steps that judge it; of a lever with gates its travel, and the gates with theirs. GUI thread.
class BenchTrace : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Filled by the Bench place's presenter")
    Q_PROPERTY(bool empty READ isEmpty NOTIFY changed)

public:
    struct Stretch {
        double low = 0.0;
        double high = 0.0;
    };
    /// A gate, a position, or an end of the range.
    struct Mark {
        double at = 0.0;
        QString name;
    };
    /// What the plot shows of the past.
    static constexpr Duration kShown = std::chrono::seconds(10);

    using QObject::QObject;

    /// Another control. `lowest` and `highest` in its unit; positions count from 0.
    void begin(double lowest, double highest, std::vector<Stretch> bands, std::vector<Mark> marks);
    void add(const std::vector<BenchPoint>& points, Time now);

    [[nodiscard]] bool isEmpty() const { return m_points.empty(); }
    [[nodiscard]] double lowest() const { return m_lowest; }
    [[nodiscard]] double highest() const { return m_highest; }
    [[nodiscard]] const std::vector<Stretch>& bands() const { return m_bands; }
    [[nodiscard]] const std::vector<Mark>& marks() const { return m_marks; }
    /// By rising time; the last one holds until now().
    [[nodiscard]] const std::deque<BenchPoint>& points() const { return m_points; }
    [[nodiscard]] Time now() const { return m_now; }

Q_SIGNALS:
    void changed();

private:
    double m_lowest = 0.0;
    double m_highest = 1.0;
    std::vector<Stretch> m_bands;
    std::vector<Mark> m_marks;
    std::deque<BenchPoint> m_points;
    Time m_now{};
};

} // namespace flowhand
