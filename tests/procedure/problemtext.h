#pragma once

#include <QString>

#include "base/problem.h"

/// Every problem, one a line, for a test's message.
inline QString problemText(const flowhand::Problems& problems) {
    QString text;
    for (const flowhand::Problem& problem : problems.all())
        text += QString::fromStdString(problem.error.code + " " + flowhand::describe(problem.error)) + "\n";
    return text;
}
