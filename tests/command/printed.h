#pragma once

#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "command/commandline.h"

/// The program as a person calls it, in the test's own process.
struct Printed {
    std::optional<int> status;
    QString out;
    QString err;
};

inline Printed flowhandWith(const QStringList& arguments) {
    std::vector<std::string> words{"flowhand"};
    for (const QString& argument : arguments)
        words.push_back(argument.toStdString());
    std::vector<char*> pointers;
    for (std::string& word : words)
        pointers.push_back(word.data());
    std::ostringstream out, err;
    Printed printed;
    flowhand::WindowWish window;
    printed.status = flowhand::runCommandLine(static_cast<int>(pointers.size()), pointers.data(), out, err, window);
    printed.out = QString::fromStdString(out.str());
    printed.err = QString::fromStdString(err.str());
    return printed;
}
