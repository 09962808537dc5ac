#include "bench/evidence.h"

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/textfile.h"

namespace flowhand {

namespace {

Status saveFailure(const std::string& what, const std::string& file) {
    return failure("save-failed", what + ": " + std::strerror(errno) + "; the measurement is not kept", {file});
}

/// The evidence file, open for appending and locked against other programs.
class Appender {
public:
    explicit Appender(const std::string& file)
        : m_descriptor(::open(file.c_str(), O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC, 0644)) {}
    ~Appender() {
        if (m_descriptor >= 0)
            ::close(m_descriptor); // and unlocks
    }
    Appender(const Appender&) = delete;
    Appender& operator=(const Appender&) = delete;

    [[nodiscard]] bool lock() {
        while (m_descriptor >= 0 && ::flock(m_descriptor, LOCK_EX) != 0)
            if (errno != EINTR)
                return false;
        return m_descriptor >= 0;
    }

    /// A write that a crash cut short leaves a line without an end; the next must not be glued to it.
    [[nodiscard]] bool endsInsideALine() const {
        struct stat now {};
        char last = '\n';
        return ::fstat(m_descriptor, &now) == 0 && now.st_size > 0 &&
               ::pread(m_descriptor, &last, 1, now.st_size - 1) == 1 && last != '\n';
    }

    [[nodiscard]] bool write(std::string_view text) {
        while (!text.empty()) {
            const ssize_t count = ::write(m_descriptor, text.data(), text.size());
            if (count < 0 && errno != EINTR)
                return false;
            text.remove_prefix(count > 0 ? static_cast<std::size_t>(count) : 0);
        }
        return ::fsync(m_descriptor) == 0;
    }

private:
    int m_descriptor;
};

bool sharesSignal(const EvidenceRecord& record, const ControlFingerprint& control) {
    return std::any_of(record.signals.begin(), record.signals.end(), [&](const std::string& signal) {
        return std::find(control.signals.begin(), control.signals.end(), signal) != control.signals.end();
    });
}

} // namespace

std::string evidenceFileOf(const std::string& rigFile) {
    std::filesystem::path path(rigFile);
    path.replace_extension(".evidence.jsonl");
    return path.string();
}

Result<std::vector<EvidenceRecord>> readEvidence(const std::string& file, Problems& problems) {
    std::vector<EvidenceRecord> records;
    std::error_code ignored;
    if (!std::filesystem::exists(file, ignored))
        return records;
    const Result<std::string> content = readFile(file, kLargestRecorded);
    if (!content)
        return tl::unexpected(content.error());
    int number = 0;
    for (std::string_view rest = *content; !rest.empty();) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        const std::string_view line = rest.substr(0, end);
        rest.remove_prefix(std::min(end + 1, rest.size()));
        ++number;
        if (line.empty())
            continue;
        Result<EvidenceRecord> record = parseEvidenceLine(line);
        if (record)
            records.push_back(std::move(*record));
        else
            problems.warning(record.error().code, record.error().message, {file, number, 0});
    }
    return records;
}

Status appendEvidence(const std::string& file, const EvidenceRecord& record) {
    const Result<std::string> line = evidenceLine(record);
    if (!line)
        return tl::unexpected(line.error());
    Appender out(file);
    if (!out.lock())
        return saveFailure("the evidence beside the rig file cannot be written to", file);
    if (!out.write((out.endsInsideALine() ? "\n" : "") + *line + "\n"))
        return saveFailure("the evidence could not be written", file);
    return {};
}

FoundEvidence findEvidence(const std::vector<EvidenceRecord>& records, std::string_view kind,
                           const ControlFingerprint& control) {
    FoundEvidence found;
    for (const EvidenceRecord& record : records) {
        if (record.kind != kind || !sharesSignal(record, control))
            continue;
        const EvidenceState state = record.fingerprint == control.hash ? EvidenceState::Current : EvidenceState::Stale;
        if (state >= found.state)
            found = {state, &record};
    }
    return found;
}

std::string dateText(std::int64_t unixSeconds) {
    using namespace std::chrono;
    const sys_seconds time{std::chrono::seconds(unixSeconds)};
    const sys_days day = floor<days>(time);
    const year_month_day date(day);
    const hh_mm_ss clock(time - day);
    char text[40];
    std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02d:%02d:%02dZ", int(date.year()), unsigned(date.month()),
                  unsigned(date.day()), int(clock.hours().count()), int(clock.minutes().count()),
                  int(clock.seconds().count()));
    return text;
}

std::optional<std::int64_t> parseDate(std::string_view text) {
    using namespace std::chrono;
    static constexpr std::string_view kForm = "0000-00-00T00:00:00Z";
    if (text.size() != kForm.size())
        return std::nullopt;
    for (std::size_t i = 0; i < text.size(); ++i)
        if (kForm[i] == '0' ? text[i] < '0' || text[i] > '9' : text[i] != kForm[i])
            return std::nullopt;
    const auto number = [&](std::size_t at, std::size_t digits) {
        int value = 0;
        for (std::size_t i = at; i < at + digits; ++i)
            value = 10 * value + (text[i] - '0');
        return value;
    };
    const year_month_day date(year(number(0, 4)), month(unsigned(number(5, 2))), day(unsigned(number(8, 2))));
    const int hour = number(11, 2), minute = number(14, 2), second = number(17, 2);
    if (!date.ok() || hour > 23 || minute > 59 || second > 59)
        return std::nullopt;
    const sys_seconds time = sys_days(date) + hours(hour) + minutes(minute) + std::chrono::seconds(second);
    return time.time_since_epoch().count();
}

} // namespace flowhand
