#pragma once

#include <memory>
#include <string>
#include <vector>

#include <QStringList>

#include "presenter/benchmaker.h"
#include "procedure/library.h"

namespace flowhand::test {

/// What a stub bench was told.
struct BenchTold {
    std::vector<BenchWish> begun;
    std::vector<std::string> shown;
    std::vector<SignalId> watched;
    int nexts = 0;
    int cancels = 0;
};

/// Puts a rig on the bench that shows one snapshot and writes down what it is told.
class StubBenchMaker final : public BenchMaker {
public:
    /// The names of all states; each begins with "bench".
    [[nodiscard]] static QStringList names();

    QString rigTitle() const override { return title; }
    QString rigFile() const override { return file; }
    Result<std::unique_ptr<BenchHandle>> open(std::function<void()> onChange) override;
    Result<std::unique_ptr<BenchHandle>> openFor(std::shared_ptr<const Aircraft> aircraft,
                                                 std::function<void()> onChange) override;

    /// `folder` must outlive it.
    void show(const QString& state, const AircraftFolder& folder);

    BenchSnapshot snapshot;
    std::vector<BenchPoint> points;
    std::string refusal; ///< not empty: open() fails with it
    QString title = QStringLiteral("Desk quadrant and pedals");
    QString file = QStringLiteral("/home/pilot/.local/share/flowhand/rigs/desk.toml");
    std::shared_ptr<BenchTold> told = std::make_shared<BenchTold>();

private:
    void showGates(const AircraftFolder& folder);
    void showFilters(const AircraftFolder& folder, bool isApplied);

    const AircraftFolder* m_folder = nullptr;
};

} // namespace flowhand::test
