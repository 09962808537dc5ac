// Archives of runs that lie. The mutator changes what is inside the packed sections and makes packing and hash right
// again, so that the checks behind them are reached; now and then it leaves the file as libFuzzer changed it.

#include <cstdlib>
#include <cstring>
#include <string>

#include "session/replay.h"
#include "store/archive.h"

using namespace flowhand;

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

std::string_view viewOf(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

Bytes mutated(Bytes bytes) {
    const std::size_t size = bytes.size();
    bytes.resize(size + 64);
    bytes.resize(LLVMFuzzerMutate(reinterpret_cast<std::uint8_t*>(bytes.data()), size, bytes.size()));
    return bytes;
}

/// Whoever opens such a run later must not be harmed either.
void judge(const StoredRun& run) {
    Problems problems;
    const std::optional<Aircraft> aircraft = parseAircraft(run.header.aircraftSource, "aircraft.toml", problems);
    const std::optional<Flow> flow =
        aircraft ? parseFlow(run.header.flowSource, run.header.flowFile, *aircraft, problems) : std::nullopt;
    if (!flow)
        std::abort(); // it was checked
    (void)judgeAgain(*aircraft, *flow, run.header.setup, run.samples, run.commands, run.summary.length);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const Result<ArchivedRun> read = readArchive(viewOf(data, size), "fuzz");
    if (!read)
        return 0;
    const Result<Bytes> again = archiveOf(read->run);
    if (!again || !readArchive(*again, "fuzz"))
        std::abort(); // what was read can be written and read
    judge(read->run);
    return 0;
}

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                               unsigned int seed) {
    Result<std::vector<ArchiveSection>> sections = splitSections(viewOf(data, size), "fuzz");
    if (!sections || sections->empty() || seed % 16 == 0)
        return LLVMFuzzerMutate(data, size, most);
    ArchiveSection& section = (*sections)[seed / 16 % sections->size()];
    if (const std::optional<Bytes> plain = unpack(section.bytes))
        section.bytes = pack({mutated(*plain)});
    else
        section.bytes = mutated(section.bytes);
    const Bytes archive = joinSections(*sections);
    if (archive.size() > most)
        return size;
    std::memcpy(data, archive.data(), archive.size());
    return archive.size();
}
