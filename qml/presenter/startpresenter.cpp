#include "presenter/startpresenter.h"

#include <algorithm>
#include <array>

#include "presenter/rows.h"
#include "presenter/stepfacts.h"

namespace flowhand {

namespace {

/// How many times slower the aircraft moves; the command line offers all up to the last.
constexpr std::array kPaces = {1, 2, 4, 10};

void add(std::vector<PickRow>& rows, const QString& title, int chosen, const QString& detail = {}) {
    PickRow row;
    row.rowId = static_cast<int>(rows.size());
    row.title = title;
    row.detail = detail;
    row.chosen = row.rowId == chosen;
    rows.push_back(row);
}

bool isIn(int row, const RowModel& model) {
    return row >= 0 && row < model.count();
}

std::string ownPlace(const FlightChoice& choice) {
    if (choice.scenario != nullptr && !choice.scenario->startPlace.empty())
        return choice.scenario->startPlace;
    return choice.flow != nullptr ? choice.flow->startPlace : std::string();
}

} // namespace

StartPresenter::StartPresenter(QObject* parent)
    : QObject(parent), m_places(PickRow::staticMetaObject, this), m_steps(PickRow::staticMetaObject, this),
      m_paces(PickRow::staticMetaObject, this) {
    showRows();
}

void StartPresenter::show(const FlightChoice& choice, const std::vector<StartPlace>& places) {
    if (choice.flow != m_choice.flow || choice.scenario != m_choice.scenario)
        m_place = m_step = 0;
    m_choice = choice;
    m_names.clear();
    for (const StartPlace& place : places)
        m_names.push_back(place.name);
    showRows();
}

void StartPresenter::showRows() {
    std::vector<PickRow> rows;
    const QString own = titleOfName(ownPlace(m_choice));
    add(rows, own.isEmpty() ? tr("As written for the flow") : tr("%1, as written for it").arg(own), m_place);
    for (const std::string& name : m_names)
        add(rows, titleOfName(name), m_place);
    m_places.setRows(rows);
    rows.clear();
    add(rows, tr("The first step"), m_step);
    if (m_choice.flow != nullptr)
        for (const Step& step : m_choice.flow->steps)
            add(rows, QString::fromStdString(step.title), m_step, titleOfName(step.jumpPlace));
    m_steps.setRows(rows);
    rows.clear();
    for (const int pace : kPaces)
        add(rows, pace == 1 ? tr("As fast as it is") : tr("%1 times slower").arg(pace), m_pace);
    m_paces.setRows(rows);
    Q_EMIT changed();
}

void StartPresenter::apply(FlightChoice& choice) const {
    if (choice.hands == HandsChoice::Demonstration)
        return;
    if (m_step > 0)
        choice.from = m_choice.flow->steps[static_cast<std::size_t>(m_step) - 1].id;
    if (!choice.feed.empty())
        return;
    if (m_place > 0)
        choice.place = m_names[static_cast<std::size_t>(m_place) - 1];
    choice.slowness = slowness();
}

void StartPresenter::pickPlace(int row) {
    if (!isIn(row, m_places))
        return;
    m_place = row;
    showRows();
}

void StartPresenter::pickStep(int row) {
    if (!isIn(row, m_steps))
        return;
    m_step = row;
    showRows();
}

void StartPresenter::pickPace(int row) {
    if (!isIn(row, m_paces))
        return;
    m_pace = row;
    showRows();
}

void StartPresenter::setEditing(bool isEditing) {
    if (m_isEditing == isEditing)
        return;
    m_isEditing = isEditing;
    Q_EMIT changed();
}

void StartPresenter::setFed(bool isFed) {
    m_isFed = isFed;
    Q_EMIT changed();
}

int StartPresenter::slowness() const {
    return kPaces[static_cast<std::size_t>(m_pace)];
}

QString StartPresenter::stepTitle() const {
    return m_step > 0 ? m_steps.row<PickRow>(m_step).title : QString();
}

QString StartPresenter::words() const {
    QStringList words{m_isFed       ? tr("where the feed is")
                      : m_place > 0 ? m_places.row<PickRow>(m_place).title
                                    : titleOfName(ownPlace(m_choice))};
    if (m_step > 0)
        words << tr("with “%1”").arg(stepTitle());
    if (m_pace > 0 && !m_isFed)
        words << m_paces.row<PickRow>(m_pace).title;
    return words.join(QStringLiteral(", "));
}

} // namespace flowhand
