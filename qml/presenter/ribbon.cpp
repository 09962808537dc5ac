#include "presenter/ribbon.h"

#include <algorithm>
#include <cmath>

#include "presenter/phrasetext.h"
#include "procedure/phase.h"

namespace flowhand {

namespace {

double phaseStart(const std::string& id) {
    const auto index = static_cast<double>(findPhase(id).value_or(0));
    return index / static_cast<double>(phases().size());
}

QString phaseTitle(const std::string& id) {
    const std::optional<std::size_t> index = findPhase(id);
    return index ? textOf(phases()[*index].title) : QString();
}

/// In mid-sentence: English writes it small there, German does not.
QString phaseWithin(const std::string& id) {
    const QString title = phaseTitle(id);
    const std::optional<std::size_t> index = findPhase(id);
    return index && title == QString::fromStdString(phases()[*index].title.english()) ? title.toLower() : title;
}

QString stretchTitle(const Flow& flow) {
    if (flow.phaseTo == flow.phaseFrom || flow.phaseTo.empty())
        return phaseTitle(flow.phaseFrom);
    return QObject::tr("%1 to %2").arg(phaseTitle(flow.phaseFrom), phaseWithin(flow.phaseTo));
}

} // namespace

std::vector<PhaseRow> phaseRows() {
    std::vector<PhaseRow> rows;
    const double share = 1.0 / static_cast<double>(phases().size());
    for (const Phase& phase : phases()) {
        PhaseRow row;
        row.rowId = static_cast<int>(rows.size());
        row.title = textOf(phase.title);
        row.from = share * row.rowId;
        row.to = share * (row.rowId + 1);
        row.height = phase.height;
        rows.push_back(row);
    }
    return rows;
}

double ribbonHeight(double across) {
    const auto count = static_cast<double>(phases().size());
    const double at = std::clamp(across, 0.0, 1.0) * count;
    const auto index = static_cast<std::size_t>(std::min(std::floor(at), count - 1.0));
    const double begin = index == 0 ? 0.0 : phases()[index - 1].height;
    const double share = at - static_cast<double>(index);
    const double eased = share * share * (3.0 - 2.0 * share);
    return begin + (phases()[index].height - begin) * eased;
}

RibbonStretch stretchOf(const Flow& flow) {
    const double share = 1.0 / static_cast<double>(phases().size());
    const double from = phaseStart(flow.phaseFrom);
    return {from, (flow.phaseTo.empty() ? from : phaseStart(flow.phaseTo)) + share, stretchTitle(flow)};
}

} // namespace flowhand
