#include "presenter/manualpresenter.h"

#include <algorithm>
#include <filesystem>

#include <QUrl>

#include "presenter/cardpage.h"
#include "report/markdown.h"

namespace flowhand {

ManualPresenter::ManualPresenter(std::string folder, QObject* parent)
    : QObject(parent), m_folder(std::move(folder)), m_rows(ManualPageRow::staticMetaObject, this) {}

void ManualPresenter::enter() {
    if (!m_pages.empty())
        return;
    Result<std::vector<ManualPage>> pages = manualPages(m_folder);
    m_failure = pages ? QString() : QString::fromStdString(describe(pages.error()));
    if (pages)
        m_pages = std::move(*pages);
    std::vector<ManualPageRow> rows;
    for (const ManualPage& page : m_pages) {
        ManualPageRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = QString::fromStdString(page.title);
        rows.push_back(row);
    }
    m_rows.setRows(rows);
    choose(m_chosen);
}

void ManualPresenter::choose(int row) {
    m_chosen = std::clamp(row, 0, std::max(m_rows.count() - 1, 0));
    const auto picture = [this](const std::string& name) {
        const std::filesystem::path file = std::filesystem::path(m_folder) / name;
        std::error_code ignored;
        return std::filesystem::exists(file, ignored)
                   ? QUrl::fromLocalFile(QString::fromStdString(file.string())).toString().toStdString()
                   : std::string();
    };
    m_text =
        m_pages.empty()
            ? QString()
            : richText(QString::fromStdString(markdownHtml(m_pages[static_cast<std::size_t>(m_chosen)].text, picture)));
    Q_EMIT chosenChanged();
}

QString ManualPresenter::title() const {
    return m_pages.empty() ? QString() : QString::fromStdString(m_pages[static_cast<std::size_t>(m_chosen)].title);
}

} // namespace flowhand
