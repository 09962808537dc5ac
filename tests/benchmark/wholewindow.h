#pragma once

#include <memory>
#include <string>

#include <QQmlApplicationEngine>
#include <QQuickWindow>
#include <QTemporaryDir>

#include "device/fakehid.h"
#include "livebench.h"
#include "livedesk.h"
#include "liveruns.h"
#include "liveshelf.h"
#include "presenter/benchpresenter.h"
#include "presenter/flypresenter.h"
#include "presenter/librarypresenter.h"
#include "presenter/progresspresenter.h"
#include "presenter/reviewpresenter.h"
#include "presenter/settings.h"
#include "presenter/sound.h"
#include "voice/silentvoice.h"
#include "window.h"

namespace flowhand {

/// The program's window as main() puts it together, with the shipped files, no devices and no voice, in a folder of its
/// own. Hands are on the screen.
class WholeWindow {
public:
    /// `now`: Unix milliseconds, for what Progress reckons.
    WholeWindow(const QTemporaryDir& folder, std::int64_t now)
        : m_settings(folder.filePath("settings.toml")), m_store(storeIn(folder)),
          m_library(m_desk, {PROCEDURES, folder.filePath("own").toStdString()}),
          progress(m_shelf, m_store, m_library.now(), [now] {
              return now;
          }) {
        fly.chooseHands(false);
    }

    /// Null: it cannot be shown.
    [[nodiscard]] QQuickWindow* show() {
        if (!showWindow(m_engine, fly, m_bench, m_review, m_settings, m_sound, {&progress, &library, nullptr}))
            return nullptr;
        return qobject_cast<QQuickWindow*>(m_engine.rootObjects().front());
    }

    [[nodiscard]] static std::string storeIn(const QTemporaryDir& folder) {
        return folder.filePath("runs.sqlite").toStdString();
    }

private:
    Settings m_settings;
    std::string m_store;
    Sound m_sound{m_settings, [] {
                      return std::make_unique<SilentVoice>();
                  }};
    FakeHid m_hid;
    LiveDesk m_desk;
    CurrentLibrary m_library;
    LiveRuns m_runs{{}, m_store, m_hid};
    LiveBenches m_benches{[this] {
                              return m_library.now();
                          },
                          {},
                          m_hid};
    BenchPresenter m_bench{m_benches, m_sound};
    LiveShelf m_shelf{m_store};
    ReviewPresenter m_review{m_shelf};

public:
    FlyPresenter fly{m_library.now(), m_runs, m_sound};
    ProgressPresenter progress;
    LibraryPresenter library{m_desk, m_library, m_benches};

private:
    QQmlApplicationEngine m_engine; ///< goes first
};

} // namespace flowhand
