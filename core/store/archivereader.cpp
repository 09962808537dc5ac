#include <algorithm>

#include "base/sha256.h"
#include "store/archive.h"
#include "store/archiveparts.h"
#include "store/chunk.h"
#include "store/runjson.h"
#include "store/runwriter.h"

namespace flowhand {

namespace {

/// Four hours at the full rate of bench_store with motion are 20 million.
constexpr std::size_t kMostSamples = 24'000'000;

/// Puts a run together from the sections of an archive; `wrong` says which did not fit.
class ArchiveReader {
public:
    bool read(const std::vector<ArchiveSection>& sections) {
        for (const ArchiveSection& section : sections)
            if (!take(section))
                return false;
        orderSamples();
        return finish();
    }

    StoredRun run;
    std::string wrong;

private:
    bool refuse(const std::string& what) {
        wrong = what;
        return false;
    }

    bool take(const ArchiveSection& section) {
        const auto* const stream = std::find(kSampleSections.begin(), kSampleSections.end(), section.kind);
        if (stream != kSampleSections.end()) {
            const auto origin = static_cast<Origin>(stream - kSampleSections.begin());
            if (!decodeChunk(section.bytes, origin, m_placed) || m_placed.size() > kMostSamples)
                return refuse("its samples cannot be read");
            return true;
        }
        constexpr std::string_view kKnown{"hafgucern"};
        if (kKnown.find(section.kind) == std::string_view::npos || m_seen.find(section.kind) != std::string::npos)
            return refuse("it has a part that does not belong there");
        m_seen.push_back(section.kind);
        std::optional<Bytes> text = unpack(section.bytes);
        if (!text)
            return refuse("a part of it cannot be unpacked");
        return takeText(section.kind, std::move(*text));
    }

    bool takeText(char kind, Bytes text) {
        switch (kind) {
        case kHeaderSection:
            m_header = std::move(text);
            return true;
        case kAircraftSection:
            run.header.aircraftSource = std::move(text);
            return true;
        case kFlowSection:
            run.header.flowSource = std::move(text);
            return true;
        case kRigSection:
            run.header.rigSource = std::move(text);
            return true;
        case kSetupSection:
            return readSetup(text, run.header) || refuse("its set-up cannot be read");
        case kCommandSection:
            return readCommands(text, run.commands) || refuse("its commands cannot be read");
        case kEventSection:
            return takeEvents(text);
        case kResultSection:
            run.summary.isFinished = true;
            return readResult(text, run.score, run.results, run.losses) || refuse("its result cannot be read");
        default:
            return readNotes(text, run.notes) || refuse("its notes cannot be read");
        }
    }

    bool takeEvents(const Bytes& text) {
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = text.find('\n', at);
            if (end == Bytes::npos)
                return refuse("its events cannot be read");
            run.eventLines.push_back(text.substr(at, end - at));
            at = end + 1;
        }
        return true;
    }

    void orderSamples() {
        std::stable_sort(m_placed.begin(), m_placed.end(), [](const PlacedSample& a, const PlacedSample& b) {
            return a.sample.time != b.sample.time ? a.sample.time < b.sample.time : a.place < b.place;
        });
        run.samples.reserve(m_placed.size());
        for (const PlacedSample& placed : m_placed)
            run.samples.push_back(placed.sample);
        m_placed = {};
    }

    bool finish() {
        for (const char kind : {kHeaderSection, kAircraftSection, kFlowSection, kRigSection, kSetupSection,
                                kCommandSection, kEventSection, kNoteSection})
            if (m_seen.find(kind) == std::string::npos)
                return refuse("a part of it is missing");
        if (!readHeader(m_header, run))
            return refuse("its header cannot be read, or does not fit its sources");
        RunSummary& summary = run.summary;
        const RunHeader& header = run.header;
        summary.startedUnixMillis = header.startedUnixMillis;
        summary.aircraftFolder = header.aircraftFolder;
        summary.flowId = header.flowId;
        summary.flowTitle = header.flowTitle;
        summary.rigTitle = header.rigTitle;
        summary.pilot = header.pilot;
        summary.isScored = run.score.isScored;
        summary.milliPoints = run.score.milliPoints;
        summary.isPassed = run.score.isPassed;
        summary.notes = static_cast<std::int64_t>(run.notes.size());
        summary.isSimulated = std::any_of(run.samples.begin(), run.samples.end(), isSimulated);
        wrong = wrongWith(run);
        return wrong.empty();
    }

    std::vector<PlacedSample> m_placed;
    std::string m_seen;
    Bytes m_header;
};

} // namespace

Result<ArchivedRun> readArchive(std::string_view bytes, const std::string& file) {
    const Result<std::vector<ArchiveSection>> sections = splitSections(bytes, file);
    if (!sections)
        return tl::unexpected(sections.error());
    ArchiveReader reader;
    if (!reader.read(*sections))
        return failure("damaged-archive",
                       "this archive holds no run that this program could have written: " + reader.wrong +
                           "; it was left alone",
                       {file, 0, 0});
    return ArchivedRun{std::move(reader.run), sha256(bytes)};
}

} // namespace flowhand
