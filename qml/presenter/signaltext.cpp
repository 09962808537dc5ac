#include "presenter/signaltext.h"

#include <QCoreApplication>

namespace flowhand {

namespace {

/// Of motionSignals() (procedure/motion.h), without the number of an engine; for lupdate to find.
[[maybe_unused]] constexpr const char* kMotionLabels[] = {
    QT_TRANSLATE_NOOP("Motion", "Airspeed"),
    QT_TRANSLATE_NOOP("Motion", "Ground speed"),
    QT_TRANSLATE_NOOP("Motion", "Vertical speed"),
    QT_TRANSLATE_NOOP("Motion", "Altitude"),
    QT_TRANSLATE_NOOP("Motion", "Height"),
    QT_TRANSLATE_NOOP("Motion", "Heading"),
    QT_TRANSLATE_NOOP("Motion", "Pitch"),
    QT_TRANSLATE_NOOP("Motion", "Bank"),
    QT_TRANSLATE_NOOP("Motion", "Turn rate"),
    QT_TRANSLATE_NOOP("Motion", "On ground"),
    QT_TRANSLATE_NOOP("Motion", "Nosewheel angle"),
    QT_TRANSLATE_NOOP("Motion", "Flap angle"),
    QT_TRANSLATE_NOOP("Motion", "Gear position"),
    QT_TRANSLATE_NOOP("Motion", "Spoiler position"),
    QT_TRANSLATE_NOOP("Motion", "Automatic braking"),
    QT_TRANSLATE_NOOP("Motion", "Offset from the line"),
    QT_TRANSLATE_NOOP("Motion", "Angle to the line"),
    QT_TRANSLATE_NOOP("Motion", "Curvature of the line"),
    QT_TRANSLATE_NOOP("Motion", "Turn ahead"),
    QT_TRANSLATE_NOOP("Motion", "Distance to stop"),
    QT_TRANSLATE_NOOP("Motion", "Runway clear"),
    QT_TRANSLATE_NOOP("Motion", "Offset from the line, mean"),
    QT_TRANSLATE_NOOP("Motion", "Offset from the line, largest"),
    QT_TRANSLATE_NOOP("Motion", "Speed in turns, largest"),
    QT_TRANSLATE_NOOP("Motion", "True airspeed"),
    QT_TRANSLATE_NOOP("Motion", "Altitude shown"),
    QT_TRANSLATE_NOOP("Motion", "Density altitude"),
    QT_TRANSLATE_NOOP("Motion", "Mass"),
    QT_TRANSLATE_NOOP("Motion", "Fuel"),
    QT_TRANSLATE_NOOP("Motion", "Centre of gravity"),
    QT_TRANSLATE_NOOP("Motion", "V1"),
    QT_TRANSLATE_NOOP("Motion", "VR"),
    QT_TRANSLATE_NOOP("Motion", "V2"),
    QT_TRANSLATE_NOOP("Motion", "VREF"),
    QT_TRANSLATE_NOOP("Motion", "Approach speed"),
    QT_TRANSLATE_NOOP("Motion", "Engine power"),
    QT_TRANSLATE_NOOP("Motion", "Reverser"),
    QT_TRANSLATE_NOOP("Motion", "Propeller speed"),
    QT_TRANSLATE_NOOP("Motion", "Track"),
    QT_TRANSLATE_NOOP("Motion", "Position, east"),
    QT_TRANSLATE_NOOP("Motion", "Position, north"),
};

} // namespace

QString labelOf(const Signal& signal) {
    const QString label = QString::fromStdString(signal.label);
    const qsizetype number = label.lastIndexOf(QLatin1Char(' ')) + 1;
    bool isOfEngine = false;
    (void)label.mid(number).toInt(&isOfEngine);
    if (!isOfEngine || number == 0)
        return QCoreApplication::translate("Motion", signal.label.c_str());
    return QCoreApplication::translate("Motion", label.left(number - 1).toUtf8().constData()) + QLatin1Char(' ') +
           label.mid(number);
}

} // namespace flowhand
