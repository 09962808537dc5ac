#include "presenter/verdict.h"

namespace flowhand {

namespace {

Verdict::Kind doneKind(const StepView& step) {
    if (step.isOutOfOrder)
        return Verdict::OutOfOrder;
    return step.isLate ? Verdict::Late : Verdict::Done;
}

} // namespace

Verdict::Kind verdictOf(const StepView& step) {
    switch (step.state) {
    case StepState::Waiting:
        return Verdict::Waiting;
    case StepState::Due:
    case StepState::Seen:
        return Verdict::Due;
    case StepState::Done:
        return doneKind(step);
    case StepState::Omitted:
        return Verdict::Wrong;
    case StepState::TooEarly:
        return Verdict::OutOfOrder;
    case StepState::Uncertain:
        return Verdict::Unsure;
    case StepState::FoundSet:
        return Verdict::Info;
    case StepState::Void:
    case StepState::LeftOut:
        return Verdict::LeftOut;
    }
    return Verdict::Waiting;
}

QString verdictWord(const StepView& step) {
    switch (step.state) {
    case StepState::Waiting:
        return QObject::tr("to come");
    case StepState::Due:
        return QObject::tr("now");
    case StepState::Seen:
        return QObject::tr("seen, hold it there");
    case StepState::Done:
        if (step.isOutOfOrder)
            return QObject::tr("out of order");
        return step.isLate ? QObject::tr("late") : QObject::tr("done");
    case StepState::Omitted:
        return QObject::tr("not done");
    case StepState::TooEarly:
        return QObject::tr("too early");
    case StepState::Uncertain:
        return QObject::tr("not certain");
    case StepState::FoundSet:
        return QObject::tr("already set");
    case StepState::Void:
        return QObject::tr("no longer needed");
    case StepState::LeftOut:
        return QObject::tr("left out");
    }
    return {};
}

bool isClosed(StepState state) {
    return state != StepState::Waiting && state != StepState::Due && state != StepState::Seen;
}

} // namespace flowhand
