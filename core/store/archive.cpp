#include "store/archive.h"

#include <array>

#include "base/sha256.h"
#include "store/archiveparts.h"
#include "store/chunk.h"
#include "store/runjson.h"
#include "store/window.h"

namespace flowhand {

namespace {

constexpr std::string_view kMark = "FLHWRUN";
constexpr char kFormat = 1;
constexpr std::size_t kHashLength = 64;
constexpr std::size_t kHeadLength = kMark.size() + 1 + kHashLength;

/// The samples as the store keeps them: by window and stream, one after the other.
class SampleSections {
public:
    explicit SampleSections(std::vector<ArchiveSection>& sections) : m_sections(sections) {}

    void take(const Sample& sample) {
        if (!m_isEmpty && windowOf(sample.time) != m_window)
            close();
        m_place = !m_isEmpty && sample.time == m_instant ? m_place + 1 : 0;
        m_isEmpty = false;
        m_window = windowOf(sample.time);
        m_instant = sample.time;
        m_streams[static_cast<std::size_t>(sample.origin)].push_back({sample, m_place});
    }

    void close() {
        for (std::size_t i = 0; i < m_streams.size(); ++i) {
            if (m_streams[i].empty())
                continue;
            m_sections.push_back({kSampleSections[i], encodeChunk(m_streams[i])});
            m_streams[i].clear();
        }
        m_isEmpty = true;
    }

private:
    std::vector<ArchiveSection>& m_sections;
    std::array<std::vector<PlacedSample>, kStreams> m_streams;
    bool m_isEmpty = true;
    std::int64_t m_window = 0;
    Time m_instant{};
    std::uint32_t m_place = 0;
};

tl::unexpected<Error> noArchive(const std::string& file) {
    return failure("not-an-archive", "this is no archive of a run; 'flowhand export RUN --archive FILE' makes one",
                   {file, 0, 0});
}

} // namespace

Result<Bytes> archiveOf(const StoredRun& run) {
    if (!run.damage.empty())
        return failure("damaged-run", "run " + std::to_string(run.summary.id) +
                                          " is damaged, and an archive would pass it on as whole: " +
                                          run.damage.front() + "; 'flowhand runs backup' copies everything as it is");
    std::vector<ArchiveSection> sections;
    sections.push_back({kHeaderSection, pack({headerJson(run)})});
    sections.push_back({kAircraftSection, pack({run.header.aircraftSource})});
    sections.push_back({kFlowSection, pack({run.header.flowSource})});
    sections.push_back({kRigSection, pack({run.header.rigSource})});
    sections.push_back({kSetupSection, pack({setupJson(run.header)})});
    SampleSections samples(sections);
    for (const Sample& sample : run.samples)
        samples.take(sample);
    samples.close();
    sections.push_back({kCommandSection, pack({commandsJson(run.commands)})});
    Bytes lines;
    for (const std::string& line : run.eventLines)
        lines += line + "\n";
    sections.push_back({kEventSection, pack({lines})});
    if (run.summary.isFinished)
        sections.push_back({kResultSection, pack({resultJson(run.score, run.results, run.losses)})});
    sections.push_back({kNoteSection, pack({notesJson(run.notes)})});
    return joinSections(sections);
}

Bytes joinSections(const std::vector<ArchiveSection>& sections) {
    Bytes body;
    for (const ArchiveSection& section : sections) {
        body.push_back(section.kind);
        putVarint(body, section.bytes.size());
        body += section.bytes;
    }
    return Bytes(kMark) + kFormat + sha256(body) + body;
}

Result<std::vector<ArchiveSection>> splitSections(std::string_view bytes, const std::string& file) {
    if (bytes.size() < kHeadLength || bytes.size() > kLargestArchive || bytes.substr(0, kMark.size()) != kMark)
        return noArchive(file);
    if (bytes[kMark.size()] != kFormat)
        return failure("newer-archive", "a newer program has written this archive; use that program", {file, 0, 0});
    const std::string_view body = bytes.substr(kHeadLength);
    if (sha256(body) != bytes.substr(kMark.size() + 1, kHashLength))
        return failure("damaged-archive", "this archive is damaged or cut short; copy it again from where it came from",
                       {file, 0, 0});
    std::vector<ArchiveSection> sections;
    std::string_view rest = body;
    while (!rest.empty()) {
        ByteReader reader(rest.substr(1));
        const std::size_t length = reader.count();
        if (!reader.isGood())
            return failure("damaged-archive", "this archive is not well formed", {file, 0, 0});
        sections.push_back({rest.front(), Bytes(reader.rest().substr(0, length))});
        rest = reader.rest().substr(length);
    }
    return sections;
}

} // namespace flowhand
