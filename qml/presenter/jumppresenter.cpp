#include "presenter/jumppresenter.h"

#include <utility>

#include "presenter/rows.h"
#include "presenter/stepfacts.h"

namespace flowhand {

JumpPresenter::JumpPresenter(QObject* parent) : QObject(parent), m_steps(PickRow::staticMetaObject, this) {}

void JumpPresenter::begin(const Flow* flow) {
    m_flow = flow;
    setOpen(false);
    pick(0);
}

void JumpPresenter::pick(int row) {
    const int count = m_flow != nullptr ? static_cast<int>(m_flow->steps.size()) : 0;
    if (row < 0 || (row >= count && count > 0))
        return;
    m_row = row;
    std::vector<PickRow> rows;
    for (int at = 0; at < count; ++at) {
        const Step& step = m_flow->steps[static_cast<std::size_t>(at)];
        PickRow each;
        each.rowId = at;
        each.title = QString::fromStdString(step.title);
        each.detail = titleOfName(at == 0 && step.jumpPlace.empty() ? m_flow->startPlace : step.jumpPlace);
        each.chosen = at == m_row;
        rows.push_back(each);
    }
    m_steps.setRows(rows);
}

void JumpPresenter::setOpen(bool isOpen) {
    if (std::exchange(m_isOpen, isOpen) != isOpen)
        Q_EMIT openChanged();
}

std::string JumpPresenter::step() const {
    return m_row < m_steps.count() ? m_flow->steps[static_cast<std::size_t>(m_row)].id : std::string();
}

} // namespace flowhand
