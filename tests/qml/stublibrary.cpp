#include "stublibrary.h"

#include <QFile>

#include "base/textfile.h"

namespace flowhand::test {

namespace {

/// An error at its line, and two pieces of advice.
QString withFaults(QString text) {
    return text.replace("title = \"Taxi light on\"", "title = \"Taxi light as required\"")
        .replace("done = \"taxi_light\"\nwithin = \"5 s\"", "done = \"taxi_lamp\"\nwithin = \"5 s\"");
}

} // namespace

QStringList StubDesk::names() {
    return {
        "library",        "library-scenarios", "library-aircraft", "library-nothing",         "library-shipped-text",
        "library-editor", "library-faults",    "library-advice",   "library-changed-outside", "manual"};
}

std::string StubDesk::manualFolder() {
    return ASSETS "/manual";
}

LibraryFolders StubDesk::folders() const {
    return {PROCEDURES, m_own.path().toStdString()};
}

void StubDesk::post(Work work, std::function<void()> then) {
    m_held.emplace_back(std::move(work), std::move(then));
    if (!isHolding)
        answer();
}

void StubDesk::answer() {
    while (!m_held.empty()) {
        auto [work, then] = std::move(m_held.front());
        m_held.erase(m_held.begin());
        work(m_check);
        then();
    }
}

void StubDesk::show(const QString& state, LibraryPresenter& library) {
    library.setPrintFolder(m_own.path());
    library.enter();
    if (state == "library-scenarios")
        return library.setKind(LibraryPresenter::Scenarios);
    if (state == "library-aircraft")
        return library.setKind(LibraryPresenter::Aircraft);
    if (state == "library-nothing")
        return library.setSearch("no such thing");
    if (state == "library")
        return;
    library.setSearch("twin_jet/taxi_out.toml");
    if (state == "library-shipped-text")
        return library.edit();
    library.copyToOwn();
    FileEditor& editor = *library.editor();
    if (state == "library-faults")
        editor.edit(withFaults(editor.text()));
    if (state == "library-advice")
        editor.edit(editor.text().replace("title = \"Taxi light on\"", "title = \"Taxi light as required\""));
    if (state != "library-changed-outside")
        return;
    const std::string theirs = "# Another's.\n" + editor.text().toStdString();
    editor.edit("# Mine.\n" + editor.text());
    const Status written = writeFile(editor.file().toStdString(), theirs);
    if (!written || editor.save())
        qFatal("the state of two changes could not be made");
}

} // namespace flowhand::test
