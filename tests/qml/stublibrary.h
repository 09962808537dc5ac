#pragma once

#include <string>

#include <QStringList>
#include <QTemporaryDir>

#include "presenter/librarypresenter.h"

namespace flowhand::test {

/// The shipped files, and a folder for the person's own; what is asked is done at once.
class StubDesk final : public LibraryDesk {
public:
    /// The names of all states of Library and manual; each begins with "library" or "manual".
    [[nodiscard]] static QStringList names();
    [[nodiscard]] static std::string manualFolder();

    [[nodiscard]] LibraryFolders folders() const;
    /// Puts the place into a state.
    void show(const QString& state, LibraryPresenter& library);

    bool isHolding = false; ///< answers wait until answer()
    void answer();

protected:
    void post(Work work, std::function<void()> then) override;

private:
    QTemporaryDir m_own;
    TextCheck m_check;
    std::vector<std::pair<Work, std::function<void()>>> m_held;
};

} // namespace flowhand::test
