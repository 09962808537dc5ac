#include "presenter/benchvoice.h"

#include <QCoreApplication>
#include <QLocale>

#include "presenter/phrasetext.h"

namespace flowhand {

namespace {

/// Longer than a hand rests on the way from one place to the next.
constexpr Duration kPatience = std::chrono::seconds(4);

bool isGoingOn(const BenchTaskView& task) {
    return task.task != BenchTask::None && !task.isOver;
}

} // namespace

void BenchVoice::show(const BenchTaskView& task, Time now) {
    const bool isNewTask = task.task != m_before.task || (isGoingOn(task) && m_before.isOver);
    const bool isNewStage = isNewTask || task.signal != m_before.signal || task.stage != m_before.stage;
    if (isNewTask && task.task == BenchTask::None)
        stop();
    if (!isNewTask)
        tellEnds(task);
    if (isNewStage || task.ask != m_before.ask)
        m_standsSince = now;
    if (isGoingOn(task) && !task.ask.isEmpty() && (isNewStage || now - m_standsSince >= kPatience) &&
        task.ask != m_said)
        say(task.ask);
    if (task.isOver && !task.outcome.empty() && (isNewTask || !m_before.isOver))
        say(task.outcome.front());
    m_before = task;
}

/// Tones for controls that are over.
void BenchVoice::tellEnds(const BenchTaskView& task) {
    const bool isOverNow = task.isOver && !m_before.isOver;
    if (task.goodCount > m_before.goodCount)
        m_sound.voice().play(Earcon::Done);
    else if (isOverNow ? !task.isGood : task.task == BenchTask::Walk && task.stage > m_before.stage)
        m_sound.voice().play(Earcon::Wrong);
}

void BenchVoice::stop() {
    m_sound.voice().hush();
    m_before = {};
    m_said = {};
}

void BenchVoice::say(const Phrase& words) {
    m_said = words;
    m_sound.voice().tell(textOf(words),
                         QLocale(QCoreApplication::translate("BenchVoice", "en", "code of this language")));
}

} // namespace flowhand
