#include "desktop.h"

#include <QDir>
#include <QStandardPaths>

namespace flowhand::test {

namespace {

/// What a busy machine may need to start a program, or to hand on an event; nobody waits for it where all is well.
constexpr int kPatienceMillis = 60'000;

} // namespace

bool Desktop::isPossible() {
    return !QStandardPaths::findExecutable("Xvfb").isEmpty();
}

QString firstLine(QProcess& program) {
    while (!program.canReadLine())
        if (!program.waitForReadyRead(kPatienceMillis))
            return {};
    return QString::fromUtf8(program.readLine()).trimmed();
}

Desktop::Desktop() {
    QDir(m_folder.path()).mkpath("home");
    QDir(m_folder.path()).mkpath("runtime");
    QFile::setPermissions(m_folder.filePath("runtime"), QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    const QProcessEnvironment outside = QProcessEnvironment::systemEnvironment();
    for (const QString& name :
         {QStringLiteral("PATH"), QStringLiteral("LD_LIBRARY_PATH"), QStringLiteral("LD_PRELOAD")})
        if (outside.contains(name))
            m_environment.insert(name, outside.value(name));
    m_environment.insert("HOME", home());
    m_environment.insert("XDG_RUNTIME_DIR", m_folder.filePath("runtime"));
    m_environment.insert("LANG", "C.UTF-8");
    m_environment.insert("QT_QPA_PLATFORM", "xcb");
    m_environment.insert("QT_QUICK_BACKEND", "software"); // an X server without a screen has no graphics card
    m_environment.insert("PULSE_SERVER", "unix:/nonexistent/pulse");
    m_environment.insert("DBUS_SESSION_BUS_ADDRESS", "unix:path=/nonexistent/bus");
}

Desktop::~Desktop() {
    while (!m_programs.empty()) {
        m_programs.back()->terminate();
        if (!m_programs.back()->waitForFinished(kPatienceMillis))
            m_programs.back()->kill();
        m_programs.pop_back();
    }
}

QString Desktop::start() {
    QProcess* server = run("Xvfb", {"-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp"});
    const QString number = server != nullptr ? firstLine(*server) : QString();
    if (number.isEmpty())
        return QStringLiteral("Xvfb does not start");
    m_environment.insert("DISPLAY", ":" + number);
    return QStandardPaths::findExecutable("xdotool").isEmpty() ? QStringLiteral("xdotool is missing; install it")
                                                               : QString();
}

QString Desktop::complaintsOf(const QString& program) const {
    return m_folder.filePath(program.section('/', -1) + ".log");
}

QProcess* Desktop::run(const QString& program, const QStringList& arguments) {
    auto process = std::make_unique<QProcess>();
    process->setProcessEnvironment(m_environment);
    process->setStandardErrorFile(complaintsOf(program), QIODevice::Append);
    process->start(program, arguments);
    if (!process->waitForStarted(kPatienceMillis))
        return nullptr;
    m_programs.push_back(std::move(process));
    return m_programs.back().get();
}

bool Desktop::act(const QStringList& arguments) {
    QProcess hands;
    hands.setProcessEnvironment(m_environment);
    hands.setProcessChannelMode(QProcess::ForwardedChannels);
    hands.start("xdotool", arguments);
    return hands.waitForFinished(kPatienceMillis) && hands.exitCode() == 0;
}

bool Desktop::press(const QStringList& keys) {
    return act(QStringList{"key"} + keys);
}

bool Desktop::type(const QString& text) {
    return act({"type", text});
}

bool Desktop::click(QPoint place) {
    return act({"mousemove", QString::number(place.x()), QString::number(place.y()), "click", "1"});
}

} // namespace flowhand::test
