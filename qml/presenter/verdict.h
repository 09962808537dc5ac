#pragma once

#include <QObject>
#include <QString>
#include <QtQml/qqmlregistration.h>

#include "procedure/flow.h"
#include "session/session.h"

namespace flowhand {

/// What became of a step, as it is shown: each kind has one symbol, one word and one colour.
class Verdict : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("Only its enumeration is used")

public:
    enum Kind { Waiting, Due, Done, Late, Wrong, OutOfOrder, Unsure, Info, LeftOut };
    Q_ENUM(Kind)
};

[[nodiscard]] Verdict::Kind verdictOf(const StepView& step);
/// One or two words: "done", "not done", "out of order".
[[nodiscard]] QString verdictWord(const StepView& step);
/// Whether nothing more can become of it.
[[nodiscard]] bool isClosed(StepState state);

} // namespace flowhand
