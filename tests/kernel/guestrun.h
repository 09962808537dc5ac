#pragma once

#include <QFile>
#include <QProcess>
#include <QStandardPaths>

/// Runs programs in the emulated machine, for the tests here.
namespace guest {

inline constexpr int kNoKernel = 77; ///< exit status of the script 'guest'

struct Outcome {
    int status = -1;
    QString output;
    QString errors;
};

/// Where tests must not be skipped.
inline bool isNeeded() {
    return qEnvironmentVariableIsSet("CI");
}

/// Why the machine cannot be had here; empty: it can.
inline QString missing() {
    for (const char* program : {"qemu-system-x86_64", "busybox", "cpio", "xz", "apt-get", "dpkg-deb"})
        if (QStandardPaths::findExecutable(program).isEmpty())
            return QString("the kernel test needs %1, which is not installed").arg(program);
    return {};
}

/// `options` as the script 'guest' has them.
inline Outcome run(int seconds, const QStringList& options, const QStringList& command) {
    QProcess process;
    process.start(KERNEL_FOLDER "/guest", QStringList{"--seconds", QString::number(seconds)} + options + command);
    process.waitForFinished((seconds + 60) * 1000);
    return {process.exitCode(), QString::fromUtf8(process.readAllStandardOutput()),
            QString::fromUtf8(process.readAllStandardError())};
}

} // namespace guest

/// Skips a test where the machine cannot be had, or fails it where it is needed.
#define SKIP_WITHOUT_GUEST()                                                                                           \
    do {                                                                                                               \
        const QString reason = guest::missing();                                                                       \
        QVERIFY2(reason.isEmpty() || !guest::isNeeded(), qPrintable(reason));                                          \
        if (!reason.isEmpty())                                                                                         \
            QSKIP(qPrintable(reason));                                                                                 \
    } while (false)

/// The same where its kernel could not be fetched.
#define SKIP_WITHOUT_KERNEL(outcome)                                                                                   \
    do {                                                                                                               \
        if ((outcome).status == guest::kNoKernel && !guest::isNeeded())                                                \
            QSKIP("the kernel package could not be fetched with apt-get download");                                    \
    } while (false)
