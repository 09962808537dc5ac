#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QtQml/qqmlregistration.h>

#include "aircraft/groundscene.h"
#include "session/run.h"

namespace flowhand {

/// The practice aircraft on its airport's ground, and the way its wheels have come, as it is flown or in a record. GUI
/// thread.
class GroundPresenter : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Made by the presenter of a place")
    /// There is ground to see, and moving on it matters in this flow.
    Q_PROPERTY(bool shown READ isShown NOTIFY shownChanged)

public:
    /// Where the wheels were, oldest first; metres, as the plan.
    struct Trail {
        std::vector<PlanPoint> nose, left, right;
    };

    explicit GroundPresenter(QObject* parent) : QObject(parent) {}

    /// Another run; without a scene nothing is shown. The trail goes on when the aircraft does.
    void begin(std::shared_ptr<const GroundScene> scene, const Flow& flow);
    void show(const RunSnapshot& snapshot);
    /// Where it came from, oldest first, and where it is, the last; empty: that is not known.
    void show(const std::vector<GroundPosition>& way);

    [[nodiscard]] bool isShown() const { return m_isShown; }
    /// None: there is nothing to draw.
    [[nodiscard]] const GroundScene* scene() const { return m_scene.get(); }
    [[nodiscard]] const std::optional<GroundPosition>& position() const { return m_position; }
    [[nodiscard]] const Trail& trail() const { return m_trail; }

Q_SIGNALS:
    void shownChanged();
    /// The aircraft or the scene is another.
    void changed();

private:
    void show(std::optional<GroundPosition> position);
    void leaveTrail();
    void tell();

    std::shared_ptr<const GroundScene> m_scene;
    std::optional<GroundPosition> m_position;
    Trail m_trail;
    bool m_doesMatter = false;
    bool m_isShown = false;
};

} // namespace flowhand
