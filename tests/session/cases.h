#pragma once

#include <QtTest>
#include <vector>

#include "session/bench.h"

namespace flowhand::test {

/// A flow, where things stand before it, what is done, and what comes of it. Events without run-started, step-moved
/// and step-seen.
struct Case {
    const char* name;
    const char* flow;
    const char* start; ///< where controls and motion stand, if not as Bench::begin has them
    const char* script;
    const char* events;
};

inline void addRows(const std::vector<Case>& cases) {
    QTest::addColumn<int>("index");
    for (std::size_t i = 0; i < cases.size(); ++i)
        QTest::newRow(cases[i].name) << static_cast<int>(i);
}

inline QString eventsOf(const Case& given, const SessionSetup& setup = onScreen()) {
    const Flow flow = flowOf(given.flow);
    Bench bench(flow, setup);
    bench.begin(given.start);
    bench.play(given.script);
    return QString::fromStdString(bench.events());
}

} // namespace flowhand::test
