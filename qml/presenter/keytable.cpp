#include "presenter/keytable.h"

#include <QCoreApplication>
#include <QStringList>

#include "presenter/keymap.h"

namespace flowhand {

namespace {

struct Line {
    const char* id; ///< null: fixed
    KeyPlace place;
    int key;
    const char* shown;
    const char* does;
};

constexpr KeyPlace kAll = KeyPlace::Everywhere;
constexpr KeyPlace kFly = KeyPlace::Fly;
constexpr KeyPlace kBench = KeyPlace::Bench;
constexpr KeyPlace kReview = KeyPlace::Review;
constexpr KeyPlace kProgress = KeyPlace::Progress;
constexpr KeyPlace kLibrary = KeyPlace::Library;
constexpr KeyPlace kManual = KeyPlace::Manual;

// clang-format off
constexpr Line kLines[] = {
    {"keys", kAll, Qt::Key_F1, "F1", QT_TRANSLATE_NOOP("KeyTable", "show or hide the keys")},
    {"sound", kAll, Qt::Key_F9, "F9", QT_TRANSLATE_NOOP("KeyTable", "sound on, quiet, off")},
    {"settings", kAll, Qt::Key_F12, "F12", QT_TRANSLATE_NOOP("KeyTable", "settings; not while a run goes on")},
    {nullptr, kAll, 0, QT_TRANSLATE_NOOP("KeyTable", "Ctrl 1 … 5"), QT_TRANSLATE_NOOP("KeyTable", "to Fly, Bench, Review, Progress, Library; not during a run")},
    {nullptr, kAll, 0, QT_TRANSLATE_NOOP("KeyTable", "Ctrl 6"), QT_TRANSLATE_NOOP("KeyTable", "the manual; not during a run")},
    {nullptr, kAll, 0, QT_TRANSLATE_NOOP("KeyTable", "Tab"), QT_TRANSLATE_NOOP("KeyTable", "to the next button or control")},

    {nullptr, kFly, 0, QT_TRANSLATE_NOOP("KeyTable", "Return"), QT_TRANSLATE_NOOP("KeyTable", "the main button")},
    {"fly.hold", kFly, Qt::Key_F2, "F2", QT_TRANSLATE_NOOP("KeyTable", "hold, and go on")},
    {"fly.repeat", kFly, Qt::Key_F3, "F3", QT_TRANSLATE_NOOP("KeyTable", "repeat the step")},
    {"fly.controls", kFly, Qt::Key_F4, "F4", QT_TRANSLATE_NOOP("KeyTable", "show or hide the on-screen controls")},
    {"fly.jump", kFly, Qt::Key_F7, "F7", QT_TRANSLATE_NOOP("KeyTable", "jump to another step")},
    {"fly.stop", kFly, Qt::Key_F8, "F8", QT_TRANSLATE_NOOP("KeyTable", "stop the run")},
    {"fly.note", kFly, Qt::Key_F10, "F10", QT_TRANSLATE_NOOP("KeyTable", "a note at this moment; Return keeps it")},
    {nullptr, kFly, 0, QT_TRANSLATE_NOOP("KeyTable", "Esc"), QT_TRANSLATE_NOOP("KeyTable", "back to the flows, between runs")},
    {nullptr, kFly, 0, QT_TRANSLATE_NOOP("KeyTable", "Page"), QT_TRANSLATE_NOOP("KeyTable", "Page Up, Page Down: another aircraft, or its scenarios")},
    {nullptr, kFly, 0, "← → ↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "choose a flow; move the control that Tab has reached")},

    {nullptr, kBench, 0, QT_TRANSLATE_NOOP("KeyTable", "Return"), QT_TRANSLATE_NOOP("KeyTable", "the main button")},
    {nullptr, kBench, 0, "↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "choose a control")},
    {"bench.wire", kBench, Qt::Key_W, "W", QT_TRANSLATE_NOOP("KeyTable", "wire it")},
    {"bench.guide", kBench, Qt::Key_G, "G", QT_TRANSLATE_NOOP("KeyTable", "wire the basic set, one control after the other")},
    {"bench.ways", kBench, Qt::Key_O, "O", QT_TRANSLATE_NOOP("KeyTable", "wire it another way")},
    {"bench.calibrate", kBench, Qt::Key_C, "C", QT_TRANSLATE_NOOP("KeyTable", "calibrate it")},
    {"bench.values", kBench, Qt::Key_V, "V", QT_TRANSLATE_NOOP("KeyTable", "give its true values")},
    {"bench.check", kBench, Qt::Key_R, "R", QT_TRANSLATE_NOOP("KeyTable", "check its calibration again")},
    {"bench.measure", kBench, Qt::Key_M, "M", QT_TRANSLATE_NOOP("KeyTable", "measure its signal")},
    {"bench.walk", kBench, Qt::Key_K, "K", QT_TRANSLATE_NOOP("KeyTable", "check walk of all controls")},
    {"bench.tolerances", kBench, Qt::Key_T, "T", QT_TRANSLATE_NOOP("KeyTable", "set its tolerances")},
    {"bench.filters", kBench, Qt::Key_A, "A", QT_TRANSLATE_NOOP("KeyTable", "use the filters that the measurement asks for")},
    {"bench.undo", kBench, Qt::Key_U, "U", QT_TRANSLATE_NOOP("KeyTable", "take that back")},
    {nullptr, kBench, 0, QT_TRANSLATE_NOOP("KeyTable", "Esc"), QT_TRANSLATE_NOOP("KeyTable", "stop what goes on")},
    {"bench.flow", kBench, Qt::Key_F, "F", QT_TRANSLATE_NOOP("KeyTable", "steps of the next flow alone")},
    {"bench.seats", kBench, Qt::Key_B, "B", QT_TRANSLATE_NOOP("KeyTable", "steps of both seats, or of the first")},
    {"bench.table", kBench, Qt::Key_X, "X", QT_TRANSLATE_NOOP("KeyTable", "save the table as CSV")},
    {"bench.sheet", kBench, Qt::Key_S, "S", QT_TRANSLATE_NOOP("KeyTable", "save the check sheet")},
    {"bench.open", kBench, Qt::Key_P, "P", QT_TRANSLATE_NOOP("KeyTable", "open the check sheet")},

    {nullptr, kReview, 0, QT_TRANSLATE_NOOP("KeyTable", "Return"), QT_TRANSLATE_NOOP("KeyTable", "go through the chosen run")},
    {"review.fit", kReview, Qt::Key_F, "F", QT_TRANSLATE_NOOP("KeyTable", "search in the list; fit the whole run in its timeline")},
    {"review.reference", kReview, Qt::Key_R, "R", QT_TRANSLATE_NOOP("KeyTable", "make the chosen run the reference, in the list")},
    {"review.tag", kReview, Qt::Key_T, "T", QT_TRANSLATE_NOOP("KeyTable", "tag the chosen run, in the list")},
    {"review.delete", kReview, Qt::Key_Delete, "Del", QT_TRANSLATE_NOOP("KeyTable", "delete the chosen run, in the list")},
    {"review.undo", kReview, Qt::Key_Z, "Z", QT_TRANSLATE_NOOP("KeyTable", "take a deletion back")},
    {nullptr, kReview, 0, QT_TRANSLATE_NOOP("KeyTable", "Esc"), QT_TRANSLATE_NOOP("KeyTable", "back to the list")},
    {"review.deviations", kReview, Qt::Key_F2, "F2", QT_TRANSLATE_NOOP("KeyTable", "deviations")},
    {"review.steps", kReview, Qt::Key_F3, "F3", QT_TRANSLATE_NOOP("KeyTable", "steps")},
    {"review.notes", kReview, Qt::Key_F4, "F4", QT_TRANSLATE_NOOP("KeyTable", "notes")},
    {"review.compare", kReview, Qt::Key_F5, "F5", QT_TRANSLATE_NOOP("KeyTable", "compare")},
    {"review.signals", kReview, Qt::Key_F6, "F6", QT_TRANSLATE_NOOP("KeyTable", "signals")},
    {"review.run", kReview, Qt::Key_F8, "F8", QT_TRANSLATE_NOOP("KeyTable", "the run as a whole")},
    {nullptr, kReview, 0, "1 … 9", QT_TRANSLATE_NOOP("KeyTable", "to that deviation; two figures where there are more")},
    {nullptr, kReview, 0, "↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "the next one of the list")},
    {nullptr, kReview, 0, QT_TRANSLATE_NOOP("KeyTable", "PgUp PgDn"), QT_TRANSLATE_NOOP("KeyTable", "deviation before, next")},
    {"review.step-before", kReview, Qt::Key_J, "J", QT_TRANSLATE_NOOP("KeyTable", "step before")},
    {"review.step-next", kReview, Qt::Key_K, "K", QT_TRANSLATE_NOOP("KeyTable", "next step")},
    {"review.change-before", kReview, Qt::Key_Comma, ",", QT_TRANSLATE_NOOP("KeyTable", "visible change before")},
    {"review.change-next", kReview, Qt::Key_Period, ".", QT_TRANSLATE_NOOP("KeyTable", "next visible change")},
    {nullptr, kReview, 0, "← →", QT_TRANSLATE_NOOP("KeyTable", "hold an earlier, a later time; farther with Shift")},
    {nullptr, kReview, 0, QT_TRANSLATE_NOOP("KeyTable", "Home End"), QT_TRANSLATE_NOOP("KeyTable", "to the start, to the end")},
    {"review.zoom-in", kReview, Qt::Key_Plus, "+", QT_TRANSLATE_NOOP("KeyTable", "zoom in at the held time")},
    {"review.zoom-out", kReview, Qt::Key_Minus, "−", QT_TRANSLATE_NOOP("KeyTable", "zoom out at the held time")},
    {"review.a", kReview, Qt::Key_A, "A", QT_TRANSLATE_NOOP("KeyTable", "set A")},
    {"review.b", kReview, Qt::Key_B, "B", QT_TRANSLATE_NOOP("KeyTable", "set B")},
    {"review.clear", kReview, Qt::Key_C, "C", QT_TRANSLATE_NOOP("KeyTable", "clear A and B")},
    {"review.play", kReview, Qt::Key_Space, QT_TRANSLATE_NOOP("KeyTable", "Space"), QT_TRANSLATE_NOOP("KeyTable", "play, stop")},
    {"review.slower", kReview, Qt::Key_S, "S", QT_TRANSLATE_NOOP("KeyTable", "slower; sample runs, in the list")},
    {"review.faster", kReview, Qt::Key_D, "D", QT_TRANSLATE_NOOP("KeyTable", "faster; deleted runs, in the list")},
    {"review.loop", kReview, Qt::Key_L, "L", QT_TRANSLATE_NOOP("KeyTable", "loop from A to B, or what is shown")},
    {"review.note", kReview, Qt::Key_N, "N", QT_TRANSLATE_NOOP("KeyTable", "a note at the held time; Return keeps it")},
    {"review.account", kReview, Qt::Key_Q, "Q", QT_TRANSLATE_NOOP("KeyTable", "the pilot's own account")},
    {"review.objective", kReview, Qt::Key_O, "O", QT_TRANSLATE_NOOP("KeyTable", "the objective")},
    {"review.practice", kReview, Qt::Key_P, "P", QT_TRANSLATE_NOOP("KeyTable", "what to practise")},
    {"review.ruling", kReview, Qt::Key_U, "U", QT_TRANSLATE_NOOP("KeyTable", "ruling on what is chosen")},
    {"review.cause", kReview, Qt::Key_W, "W", QT_TRANSLATE_NOOP("KeyTable", "cause of what is chosen")},
    {"review.other", kReview, Qt::Key_X, "X", QT_TRANSLATE_NOOP("KeyTable", "compare with another run")},
    {"review.export", kReview, Qt::Key_E, "E", QT_TRANSLATE_NOOP("KeyTable", "write the debrief down")},
    {"review.cockpit", kReview, Qt::Key_V, "V", QT_TRANSLATE_NOOP("KeyTable", "show or hide the cockpit")},

    {nullptr, kProgress, 0, QT_TRANSLATE_NOOP("KeyTable", "Return"), QT_TRANSLATE_NOOP("KeyTable", "fly what the plan has first")},
    {nullptr, kProgress, 0, "↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "choose a flow")},
    {"progress.fly", kProgress, Qt::Key_F, "F", QT_TRANSLATE_NOOP("KeyTable", "fly the chosen flow")},
    {"progress.next", kProgress, Qt::Key_P, "P", QT_TRANSLATE_NOOP("KeyTable", "the next pilot or rig")},
    {"progress.mix", kProgress, Qt::Key_M, "M", QT_TRANSLATE_NOOP("KeyTable", "mix pilots and rigs, or not")},

    {nullptr, kLibrary, 0, QT_TRANSLATE_NOOP("KeyTable", "Return"), QT_TRANSLATE_NOOP("KeyTable", "change your own file, or make a copy to change")},
    {nullptr, kLibrary, 0, "↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "choose a file")},
    {nullptr, kLibrary, 0, "← →", QT_TRANSLATE_NOOP("KeyTable", "flows, checklists, scenarios, aircraft")},
    {nullptr, kLibrary, 0, QT_TRANSLATE_NOOP("KeyTable", "PgUp PgDn"), QT_TRANSLATE_NOOP("KeyTable", "turn the card")},
    {"library.text", kLibrary, Qt::Key_T, "T", QT_TRANSLATE_NOOP("KeyTable", "show the text")},
    {"library.print", kLibrary, Qt::Key_P, "P", QT_TRANSLATE_NOOP("KeyTable", "print the card as PDF")},
    {"library.search", kLibrary, Qt::Key_F, "F", QT_TRANSLATE_NOOP("KeyTable", "search")},
    {nullptr, kLibrary, 0, QT_TRANSLATE_NOOP("KeyTable", "Ctrl S"), QT_TRANSLATE_NOOP("KeyTable", "save the text")},
    {nullptr, kLibrary, 0, "F4", QT_TRANSLATE_NOOP("KeyTable", "to the next finding in the text")},
    {nullptr, kLibrary, 0, "F5", QT_TRANSLATE_NOOP("KeyTable", "take the file as it is on the disk")},
    {nullptr, kLibrary, 0, "F6", QT_TRANSLATE_NOOP("KeyTable", "keep yours, where both were changed")},
    {nullptr, kLibrary, 0, "F7", QT_TRANSLATE_NOOP("KeyTable", "act a step out on the on-screen controls")},
    {nullptr, kLibrary, 0, "F8", QT_TRANSLATE_NOOP("KeyTable", "write the step that was acted out")},
    {nullptr, kLibrary, 0, QT_TRANSLATE_NOOP("KeyTable", "Esc"), QT_TRANSLATE_NOOP("KeyTable", "back to the list")},

    {nullptr, kManual, 0, "↑ ↓", QT_TRANSLATE_NOOP("KeyTable", "choose a page")},
    {nullptr, kManual, 0, QT_TRANSLATE_NOOP("KeyTable", "PgUp PgDn"), QT_TRANSLATE_NOOP("KeyTable", "turn it")},
    {nullptr, kManual, 0, QT_TRANSLATE_NOOP("KeyTable", "Esc"), QT_TRANSLATE_NOOP("KeyTable", "back to where you were")},
};
// clang-format on

QString translated(const char* words) {
    return QCoreApplication::translate("KeyTable", words);
}

/// In files and words alike: what the binding does to its controls.
const char* idOf(KeyAction action) {
    switch (action) {
    case KeyAction::Raise:
        return "more";
    case KeyAction::Lower:
        return "less";
    case KeyAction::Toggle:
        return "change";
    case KeyAction::Press:
        break;
    }
    return "press";
}

QString wordOf(const KeyBinding& binding) {
    static const QStringList across = {"tiller", "rudder_pedals", "yoke_roll"};
    const QString control = QString::fromStdString(binding.controls.front());
    const bool isMore = binding.action == KeyAction::Raise;
    if (binding.action == KeyAction::Toggle)
        return translated(QT_TRANSLATE_NOOP("KeyTable", "to and fro"));
    if (binding.action == KeyAction::Press)
        return translated(QT_TRANSLATE_NOOP("KeyTable", "press"));
    if (across.contains(control))
        return isMore ? translated(QT_TRANSLATE_NOOP("KeyTable", "right"))
                      : translated(QT_TRANSLATE_NOOP("KeyTable", "left"));
    if (control == QStringLiteral("yoke_pitch"))
        return isMore ? translated(QT_TRANSLATE_NOOP("KeyTable", "pull"))
                      : translated(QT_TRANSLATE_NOOP("KeyTable", "push"));
    return isMore ? translated(QT_TRANSLATE_NOOP("KeyTable", "more, or next"))
                  : translated(QT_TRANSLATE_NOOP("KeyTable", "less, or back"));
}

KeyUse useOf(const KeyBinding& binding) {
    QStringList names;
    for (const std::string& control : binding.controls)
        names.append(QString::fromStdString(control));
    KeyUse use;
    use.id = QStringLiteral("%1 %2").arg(names.join(QLatin1Char('+')), QLatin1String(idOf(binding.action)));
    use.place = KeyPlace::Fly;
    use.key = binding.key;
    use.shown = binding.shown;
    use.does = QStringLiteral("%1: %2").arg(
        names.join(QStringLiteral(" + ")).replace(QLatin1Char('_'), QLatin1Char(' ')), wordOf(binding));
    use.isControl = true;
    return use;
}

} // namespace

std::vector<KeyUse> keyTable() {
    std::vector<KeyUse> table;
    for (const Line& line : kLines) {
        KeyUse use;
        use.id = QString::fromLatin1(line.id);
        use.place = line.place;
        use.key = line.key;
        use.shown = translated(line.shown);
        use.does = translated(line.does);
        table.push_back(std::move(use));
    }
    for (const KeyBinding& binding : keyBindings())
        table.push_back(useOf(binding));
    return table;
}

} // namespace flowhand
