#include "measured.h"

#include <istream>
#include <ostream>
#include <sstream>

void Measured::write(std::ostream& out) const {
    out << "reports";
    for (const std::uint64_t count : reports)
        out << ' ' << count;
    out << "\nsuspected " << suspected << "\ncpu " << cpuMicros << '\n';
    for (const std::int64_t seen : seenNanos)
        out << "seen " << seen << '\n';
    if (hasWindow)
        out << "window " << shown << '\n';
    out << std::flush;
}

Measured Measured::read(std::istream& in) {
    Measured measured;
    for (std::string line; std::getline(in, line);) {
        std::istringstream words(line);
        std::string word;
        words >> word;
        if (word == "window") {
            measured.hasWindow = true;
            std::getline(words >> std::ws, measured.shown);
        } else if (word == "reports")
            for (std::uint64_t count = 0; words >> count;)
                measured.reports.push_back(count);
        else if (word == "suspected")
            words >> measured.suspected;
        else if (word == "cpu")
            words >> measured.cpuMicros;
        else if (std::int64_t seen = 0; word == "seen" && words >> seen)
            measured.seenNanos.push_back(seen);
    }
    return measured;
}
