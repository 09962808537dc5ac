#include "screenreader.h"

#include <QDBusArgument>
#include <QDBusConnectionInterface>
#include <QDBusMessage>
#include <QDBusVariant>
#include <QFile>
#include <QStandardPaths>
#include <QTest>

namespace flowhand::test {

namespace {

// Names of the AT-SPI 2 interfaces, and the number of a state: https://gitlab.gnome.org/GNOME/at-spi2-core,
// xml/*.xml and atspi/atspi-constants.h.
const QString kAccessible = QStringLiteral("org.a11y.atspi.Accessible");
const QString kComponent = QStringLiteral("org.a11y.atspi.Component");
const QString kRoot = QStringLiteral("/org/a11y/atspi/accessible/root");
const QString kRegistry = QStringLiteral("org.a11y.atspi.Registry");
constexpr unsigned kFocused = 12;
constexpr unsigned kShowing = 25;
constexpr unsigned kOnScreen = 0; ///< ATSPI_COORD_TYPE_SCREEN

/// An object of a program on the bus.
struct Thing {
    QString program;
    QString path;
};

QList<QVariant> ask(const QDBusConnection& bus, const Thing& thing, const QString& interface, const QString& what,
                    const QList<QVariant>& with = {}) {
    QDBusMessage call = QDBusMessage::createMethodCall(thing.program, thing.path, interface, what);
    call.setArguments(with);
    return bus.call(call).arguments(); // of what is gone meanwhile: words only
}

QString property(const QDBusConnection& bus, const Thing& thing, const QString& name) {
    const QList<QVariant> answer =
        ask(bus, thing, QStringLiteral("org.freedesktop.DBus.Properties"), QStringLiteral("Get"), {kAccessible, name});
    return answer.isEmpty() ? QString() : answer.first().value<QDBusVariant>().variant().toString();
}

/// The first 32, a bit each.
uint statesOf(const QDBusConnection& bus, const Thing& thing) {
    const QList<QVariant> answer = ask(bus, thing, kAccessible, QStringLiteral("GetState"));
    if (answer.isEmpty() || !answer.first().canConvert<QDBusArgument>())
        return 0;
    return qdbus_cast<QList<uint>>(answer.first()).value(0);
}

QRect placeOf(const QDBusConnection& bus, const Thing& thing) {
    const QList<QVariant> answer = ask(bus, thing, kComponent, QStringLiteral("GetExtents"), {kOnScreen});
    if (answer.isEmpty() || !answer.first().canConvert<QDBusArgument>())
        return {};
    const auto extents = answer.first().value<QDBusArgument>();
    int x = 0;
    int y = 0;
    int width = 0;
    int height = 0;
    extents.beginStructure();
    extents >> x >> y >> width >> height;
    extents.endStructure();
    return {x, y, width, height};
}

QList<Thing> childrenOf(const QDBusConnection& bus, const Thing& thing) {
    QList<Thing> children;
    const QList<QVariant> answer = ask(bus, thing, kAccessible, QStringLiteral("GetChildren"));
    if (answer.isEmpty() || !answer.first().canConvert<QDBusArgument>())
        return children;
    const auto list = answer.first().value<QDBusArgument>();
    list.beginArray();
    while (!list.atEnd()) {
        Thing child;
        QDBusObjectPath path;
        list.beginStructure();
        list >> child.program >> path;
        list.endStructure();
        child.path = path.path();
        children.append(child);
    }
    list.endArray();
    return children;
}

void readInto(QList<Shown>& all, const QDBusConnection& bus, const Thing& thing) {
    for (const Thing& child : childrenOf(bus, thing)) {
        if (child.path != kRoot) { // a program itself is no part of the screen
            const uint states = statesOf(bus, child);
            if ((states & (1U << kShowing)) == 0)
                continue;
            Shown shown;
            shown.hasFocus = (states & (1U << kFocused)) != 0;
            shown.place = placeOf(bus, child);
            shown.name = property(bus, child, QStringLiteral("Name"));
            shown.description = property(bus, child, QStringLiteral("Description"));
            shown.role = ask(bus, child, kAccessible, QStringLiteral("GetRoleName")).value(0).toString();
            all.append(shown);
        }
        readInto(all, bus, child);
    }
}

/// A bus of its own, which starts nothing by itself.
QString startBus(Desktop& desktop) {
    const QString file = desktop.folder() + QStringLiteral("/bus.conf");
    QFile config(file);
    if (!config.open(QIODevice::WriteOnly))
        return {};
    config.write("<busconfig><type>session</type><listen>unix:dir=" + desktop.folder().toUtf8() +
                 "</listen><policy context='default'><allow send_destination='*' eavesdrop='true'/>"
                 "<allow eavesdrop='true'/><allow own='*'/></policy></busconfig>");
    config.close();
    QProcess* bus =
        desktop.run(QStringLiteral("dbus-daemon"), {"--config-file=" + file, "--nofork", "--print-address"});
    return bus != nullptr ? firstLine(*bus) : QString();
}

} // namespace

QString ScreenReader::start(Desktop& desktop) {
    const QString address = startBus(desktop);
    if (address.isEmpty())
        return QStringLiteral("dbus-daemon does not start");
    desktop.setVariable(QStringLiteral("DBUS_SESSION_BUS_ADDRESS"), address);
    const QString launcher = QStandardPaths::findExecutable(QStringLiteral("at-spi-bus-launcher"),
                                                            {"/usr/libexec", "/usr/lib/at-spi2-core", "/usr/lib"});
    if (launcher.isEmpty() || desktop.run(launcher, {"--launch-immediately", "--a11y=1"}) == nullptr)
        return QStringLiteral("at-spi-bus-launcher does not start; install the package at-spi2-core");
    const QDBusConnection session = QDBusConnection::connectToBus(address, QStringLiteral("session"));
    const QString service = QStringLiteral("org.a11y.Bus");
    if (!QTest::qWaitFor(
            [&] {
                return session.isConnected() && session.interface()->isServiceRegistered(service).value();
            },
            60'000))
        return QStringLiteral("there is no accessibility bus");
    const QList<QVariant> answer =
        ask(session, {service, QStringLiteral("/org/a11y/bus")}, service, QStringLiteral("GetAddress"));
    m_bus = QDBusConnection::connectToBus(answer.value(0).toString(), QStringLiteral("accessibility"));
    return m_bus.isConnected() ? QString() : m_bus.lastError().message();
}

QList<Shown> ScreenReader::look() const {
    QList<Shown> all;
    readInto(all, m_bus, {kRegistry, kRoot});
    return all;
}

std::optional<Shown> ScreenReader::named(const QString& name) const {
    for (const Shown& shown : look())
        if (shown.name == name)
            return shown;
    return std::nullopt;
}

std::optional<Shown> ScreenReader::beginning(const QString& name) const {
    for (const Shown& shown : look())
        if (shown.name.startsWith(name))
            return shown;
    return std::nullopt;
}

} // namespace flowhand::test
