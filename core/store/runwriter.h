#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/sha256.h"
#include "procedure/aircraftfile.h"
#include "session/record.h"
#include "store/archive.h"
#include "store/chunk.h"
#include "store/connection.h"
#include "store/window.h"

namespace flowhand {

/// What came in since the last write.
struct RunBatch {
    std::vector<Sample> samples;
    std::vector<RunCommand> commands;
    std::vector<Event> events;

    [[nodiscard]] bool isEmpty() const { return samples.empty() && commands.empty() && events.empty(); }
};

/// A hand that was not on a control: it came from the screen or a script.
[[nodiscard]] bool isSimulated(const Sample& sample);

/// Writes one run, each call one transaction. One thread at a time. After an error it must not be used any more.
class RunWriter {
public:
    explicit RunWriter(Connection connection) : m_connection(std::move(connection)) {}

    /// Gives the run's id. Error `store-bad-header` when the header's aircraft or flow cannot be read back.
    [[nodiscard]] Result<std::int64_t> begin(const RunHeader& header);
    [[nodiscard]] Status write(const RunBatch& batch);
    [[nodiscard]] Status finish(Time end, const Score& score, const std::vector<StepResult>& results,
                                const RunLosses& losses);
    /// A whole run, all or nothing, in place of the three above. Error `already-imported`.
    [[nodiscard]] Result<std::int64_t> add(const ArchivedRun& archived);

private:
    struct Stream {
        std::vector<PlacedSample> samples; ///< of the open window
        std::size_t journalled = 0;
        std::int64_t parts = 0;
    };

    [[nodiscard]] Status keepNames(const RunHeader& header);
    [[nodiscard]] Status wantNew(const std::string& archiveHash);
    [[nodiscard]] Status addHeader(const RunHeader& header, const std::string& archiveHash);
    [[nodiscard]] Status addBeside(const StoredRun& run);
    [[nodiscard]] Status addLine(const std::string& line);
    [[nodiscard]] Status addResult(Time end, const Score& score, const std::vector<StepResult>& results,
                                   const RunLosses& losses);
    [[nodiscard]] Status addSource(const std::string& source);
    [[nodiscard]] Status addSamples(const std::vector<Sample>& samples);
    [[nodiscard]] Status addCommands(const std::vector<RunCommand>& commands);
    [[nodiscard]] Status addEvents(const std::vector<Event>& events);
    [[nodiscard]] Status updateRun();
    void take(const Sample& sample);
    [[nodiscard]] Status journal();
    [[nodiscard]] Status closeWindow();
    [[nodiscard]] Status addKeyframe();
    [[nodiscard]] Status addChunk(std::size_t stream, std::int64_t part, const std::vector<PlacedSample>& samples);

    Connection m_connection;
    std::int64_t m_run = 0;
    std::string m_version;

    std::optional<Aircraft> m_aircraft; ///< gives the names in the events' text
    std::vector<std::string> m_stepIds;

    std::array<Stream, kStreams> m_streams; ///< by Origin
    std::optional<std::int64_t> m_window;
    Bytes m_keyframe; ///< of the open window; empty once written
    State m_state;
    Time m_instant = Time::min(); ///< of the last sample
    std::uint32_t m_place = 0;

    Time m_length{};
    bool m_isSimulated = false;
    std::int64_t m_commands = 0;
    std::int64_t m_events = 0;
    Sha256 m_eventsHash;
};

} // namespace flowhand
