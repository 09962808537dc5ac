#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QStringList>
#include <QTemporaryDir>

#include "presenter/reviewpresenter.h"

namespace flowhand::test {

/// Runs in a file of their own, from the shipped sample runs; what is asked is done at once.
class StubShelf final : public RunShelf {
public:
    /// The names of all states; each begins with "review".
    [[nodiscard]] static QStringList names();

    /// To be pressed once the window is there: for states that the window alone knows.
    [[nodiscard]] static std::vector<int> keysFor(const QString& state);

    /// The names of the states of the Progress place; each begins with "progress".
    [[nodiscard]] static QStringList progressNames();
    /// The time it is in those, ms since 1970.
    static constexpr std::int64_t kNow = 1'717'784'400'000; // 2024-06-07 18:20 UTC
    void fillProgress(const QString& state);
    /// Runs for a state to show; gives the one that it opens, 0: none.
    std::int64_t fill(const QString& state);
    /// Adds a sample run, `name` being that of its file, after `change`; gives its number.
    std::int64_t add(const std::string& name, const std::function<void(StoredRun&)>& change = {});
    /// A run that the program's end cut off in its middle.
    std::int64_t addCutOff(const std::string& name);
    [[nodiscard]] Store& store();
    /// The ground of the shipped aircraft.
    [[nodiscard]] static std::shared_ptr<const GroundScene> ground(const std::string& aircraft);
    [[nodiscard]] std::string file() const { return m_folder.filePath("runs.sqlite").toStdString(); }

    bool isRefusing = false; ///< the store cannot be opened

protected:
    void post(Work work, std::function<void()> then) override;

private:
    void addNotes(std::int64_t run);
    void addPractice(const std::string& name, double daysAgo, double pace, const std::string& pilot = "Ada",
                     const std::string& rig = "Desk quadrant and pedals");
    void fillList(bool isTaxiDeleted);

    QTemporaryDir m_folder;
    std::optional<Result<Store>> m_store;
    int m_changed = 0;
};

} // namespace flowhand::test
