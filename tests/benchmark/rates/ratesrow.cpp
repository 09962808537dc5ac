#include "ratesrow.h"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <sstream>

namespace {

/// Microseconds from each press to when it was known, sorted. What was never known is missing.
std::vector<double> latencies(const Sent& sent, const Measured& measured) {
    std::vector<double> micros;
    for (auto press = sent.presses.begin(); press != sent.presses.end(); ++press) {
        const auto seen = std::lower_bound(measured.seenNanos.begin(), measured.seenNanos.end(), *press);
        const bool isSeen = seen != measured.seenNanos.end() && (press + 1 == sent.presses.end() || *seen < press[1]);
        if (isSeen)
            micros.push_back(static_cast<double>(*seen - *press) / 1000.0);
    }
    std::sort(micros.begin(), micros.end());
    return micros;
}

double percentile(const std::vector<double>& sorted, double share) {
    return sorted.empty() ? 0.0 : sorted[static_cast<std::size_t>(share * static_cast<double>(sorted.size() - 1))];
}

long long lostOf(const Sent& sent, const Measured& measured) {
    long long lost = 0;
    for (const std::uint64_t count : measured.reports)
        lost += static_cast<long long>(sent.each) - static_cast<long long>(count);
    return lost;
}

void tellReader(const char* name, const Sent& sent, const Measured& measured) {
    const std::vector<double> micros = latencies(sent, measured);
    std::printf("  %-9s lost %lld of %llu; CPU %.3f s; press %s after p50 %.0f, p99 %.0f, most %.0f us (%zu of %zu)\n",
                name, lostOf(sent, measured), static_cast<unsigned long long>(sent.each * measured.reports.size()),
                static_cast<double>(measured.cpuMicros) / 1e6, measured.hasWindow ? "shown" : "known",
                percentile(micros, 0.5), percentile(micros, 0.99), percentile(micros, 1.0), micros.size(),
                sent.presses.size());
}

void compare(const Sent& sent, const Measured& bare, const Measured& program) {
    std::printf("  beside it CPU %.2f x (target 1.5), p99 %+.2f ms (target +1); lost %lld (target 0), counted %llu\n",
                static_cast<double>(program.cpuMicros) / static_cast<double>(std::max<std::int64_t>(1, bare.cpuMicros)),
                (percentile(latencies(sent, program), 0.99) - percentile(latencies(sent, bare), 0.99)) / 1000.0,
                lostOf(sent, program), static_cast<unsigned long long>(program.suspected));
}

void tellWindow(const RatesRow& row, const Sent& sent, const Measured& program) {
    const char* target = row.program == RateProgram::Stopped || row.wish.rate > 1000 ? "counted and shown" : "0";
    if (row.program == RateProgram::WithIdleWindow)
        target = "0";
    std::printf("  window    lost %lld (target %s), counted %llu, shown %s\n", lostOf(sent, program), target,
                static_cast<unsigned long long>(program.suspected),
                program.shown.empty() ? "nothing" : ("'" + program.shown + "'").c_str());
}

} // namespace

Sent Sent::read(std::istream& in) {
    Sent sent;
    for (std::string line; std::getline(in, line);) {
        std::istringstream words(line);
        std::string word;
        words >> word;
        if (std::int64_t nanos = 0; word == "press" && words >> nanos)
            sent.presses.push_back(nanos);
        else if (word == "sent")
            words >> sent.each >> word >> sent.latestMicros;
    }
    return sent;
}

void tellRow(const RatesRow& row, const std::string& folder) {
    std::ifstream sentFile(folder + "/sent");
    std::ifstream bareFile(folder + "/bare");
    std::ifstream programFile(folder + "/program");
    const Sent sent = Sent::read(sentFile);
    const Measured bare = Measured::read(bareFile);
    const Measured program = Measured::read(programFile);
    std::printf("%s (%d reports/s each, %d s; the latest report was sent %.1f ms late)\n", row.title, row.wish.rate,
                row.wish.seconds, static_cast<double>(sent.latestMicros) / 1000.0);
    tellReader("bare loop", sent, bare);
    tellReader("program", sent, program);
    if (program.hasWindow)
        tellWindow(row, sent, program);
    else
        compare(sent, bare, program);
    std::fflush(stdout);
}
