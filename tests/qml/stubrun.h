#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include <QQmlEngine>
#include <QQuickView>
#include <QStringList>
#include <QTemporaryDir>

#include "fakevoice.h"
#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/manualpresenter.h"
#include "presenter/progresspresenter.h"
#include "presenter/settings.h"
#include "presenter/sound.h"
#include "stubbench.h"
#include "stublibrary.h"
#include "stubreview.h"

namespace flowhand::test {

/// The Tokens singleton of an engine.
[[nodiscard]] QObject* tokensOf(QQmlEngine& engine);

/// What a stub run was told.
struct Told {
    std::vector<CommandKind> commands;
    std::vector<std::string> texts; ///< of the commands
    std::vector<std::pair<SignalId, Value>> moves;
};

/// Makes runs that show one snapshot and write down what they are told.
class StubMaker final : public RunMaker {
public:
    Result<std::unique_ptr<RunHandle>> make(const FlightChoice& choice, std::function<void()> onChange) override;
    bool canDemonstrate(const FlightChoice&) const override { return true; }
    Result<PracticeFigures> practice(const AircraftFolder&) const override;
    QString rigTitle() const override { return rig; }
    ConnectedDevices devices() const override { return connected; }

    RunSnapshot snapshot;
    QString rig;
    ConnectedDevices connected;
    std::string refusal; ///< not empty: make() fails with it
    std::shared_ptr<Told> told = std::make_shared<Told>();
    FlightChoice last;
};

/// The window in one of the states that it can be in, all its data made up.
class Stage {
public:
    /// The names of all states.
    [[nodiscard]] static QStringList names();
    explicit Stage(const QString& name);

    [[nodiscard]] FlyPresenter& fly() { return *m_fly; }
    [[nodiscard]] BenchPresenter& bench() { return m_bench; }
    [[nodiscard]] ReviewPresenter& review() { return m_review; }
    [[nodiscard]] StubBenchMaker& benchMaker() { return m_benchMaker; }
    [[nodiscard]] ProgressPresenter& progress() { return *m_progress; }
    [[nodiscard]] LibraryPresenter& library() { return *m_libraryPlace; }
    [[nodiscard]] ManualPresenter& manual() { return m_manual; }
    /// The place that is shown: as Shell.qml counts them.
    [[nodiscard]] int place() const { return m_place; }
    /// Puts the window's frame into a view that is to be shown.
    void fill(QQuickView& view);
    /// To be pressed once the window is there: for states that the window alone knows.
    [[nodiscard]] std::vector<int> keys() const;
    [[nodiscard]] StubMaker& maker() { return m_maker; }
    [[nodiscard]] Sound& sound() { return m_sound; }
    [[nodiscard]] Settings& settings() { return m_settings; }
    /// What the window said.
    [[nodiscard]] Heard& heard() { return *m_heard; }
    [[nodiscard]] const Flow& flow(int row = 0) const {
        return m_library->aircraft.front().flows[static_cast<std::size_t>(row)];
    }
    [[nodiscard]] const Aircraft& aircraft() const { return *m_library->aircraft.front().aircraft; }

private:
    void build(const QString& name);
    void showReview();
    void setUp(bool isReady);
    void running(int due);
    void held();
    void ended(bool isPassed);
    void fed(const QString& name);
    void flightOver();

    std::shared_ptr<LoadedLibrary> m_library = std::make_shared<LoadedLibrary>();
    StubMaker m_maker;
    QTemporaryDir m_folder;
    Settings m_settings{m_folder.filePath("settings.toml")};
    std::shared_ptr<Heard> m_heard = std::make_shared<Heard>();
    Sound m_sound{m_settings, [this] {
                      return std::make_unique<FakeVoice>(m_heard);
                  }};
    std::unique_ptr<FlyPresenter> m_fly;
    StubBenchMaker m_benchMaker;
    BenchPresenter m_bench{m_benchMaker, m_sound};
    StubShelf m_shelf;
    ReviewPresenter m_review{m_shelf, &StubShelf::ground};
    std::unique_ptr<ProgressPresenter> m_progress;
    StubDesk m_desk;
    CurrentLibrary m_files{m_desk, m_desk.folders()};
    std::unique_ptr<LibraryPresenter> m_libraryPlace;
    ManualPresenter m_manual{StubDesk::manualFolder()};
    QString m_name;
    int m_place = 0;
};

} // namespace flowhand::test
