#pragma once

#include <memory>
#include <vector>

#include <QProcess>
#include <QProcessEnvironment>
#include <QRect>
#include <QString>
#include <QTemporaryDir>

namespace flowhand::test {

/// A desktop of its own: an X server without a screen, a home folder with nothing in it, and hands that make key and
/// mouse events. No window manager, no sound server. Ends with all that runs on it.
class Desktop {
public:
    /// False on a machine without Xvfb.
    [[nodiscard]] static bool isPossible();

    Desktop();
    ~Desktop();

    /// Empty, or why it did not start.
    [[nodiscard]] QString start();

    /// For programs that are to run on it.
    [[nodiscard]] const QProcessEnvironment& environment() const { return m_environment; }
    void setVariable(const QString& name, const QString& value) { m_environment.insert(name, value); }
    [[nodiscard]] QString home() const { return m_folder.filePath("home"); }
    [[nodiscard]] QString folder() const { return m_folder.path(); }

    /// The file of what a program wrote to its standard error.
    [[nodiscard]] QString complaintsOf(const QString& program) const;
    /// Starts a program that ends with the desktop, or before; null when it does not start. What it writes to its
    /// standard output is read by the caller.
    [[nodiscard]] QProcess* run(const QString& program, const QStringList& arguments = {});

    /// Events of the X server's own (XTEST), by xdotool: a program cannot tell them from those of a device.
    /// `keys` as xdotool names them: "Return", "ctrl+3".
    bool press(const QStringList& keys);
    bool type(const QString& text);
    bool click(QPoint place);

private:
    bool act(const QStringList& arguments);

    QTemporaryDir m_folder;
    QProcessEnvironment m_environment;
    std::vector<std::unique_ptr<QProcess>> m_programs; ///< in the order of their starts
};

/// The first line that `program` writes; empty when it ends without one.
[[nodiscard]] QString firstLine(QProcess& program);

} // namespace flowhand::test
