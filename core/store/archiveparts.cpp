#include "store/archiveparts.h"

#include <nlohmann/json.hpp>

#include "base/sha256.h"
#include "base/wholenumber.h"
#include "store/runjson.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

std::string dumped(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Calls `read` with the parsed text; false where that, or it, throws.
template <class Read>
bool parsed(std::string_view text, Read read) {
    try {
        read(Json::parse(text));
    } catch (const nlohmann::json::exception&) {
        return false;
    }
    return true;
}

Json toJson(const Note& note) {
    return {{"written_ms", note.writtenUnixMillis},
            {"kind", nameOf(note.kind)},
            {"author", note.author},
            {"step", note.anchor.step},
            {"offset_us", micros(note.anchor.offset)},
            {"time_us", micros(note.anchor.time)},
            {"guard", note.guard},
            {"phase", note.phase},
            {"choice", note.choice},
            {"text", note.text}};
}

/// Whole microseconds that fit a Time with room to reckon.
Time timeOf(const Json& json) {
    constexpr std::int64_t kMost = 1'000'000'000'000; // 11 days
    const auto time = wholeNumber<std::int64_t>(json);
    if (time < -kMost || time > kMost)
        throw Json::out_of_range::create(401, "no time of a run", &json);
    return std::chrono::microseconds(time);
}

Note noteOf(const Json& json) {
    Note note;
    const std::optional<NoteKind> kind = findNoteKind(json.at("kind").get<std::string>());
    if (!kind)
        throw Json::out_of_range::create(403, "no such kind of note", &json);
    note.kind = *kind;
    note.writtenUnixMillis = wholeNumber<std::int64_t>(json.at("written_ms"));
    note.author = json.at("author").get<std::string>();
    note.anchor = {json.at("step").get<std::string>(), timeOf(json.at("offset_us")), timeOf(json.at("time_us"))};
    note.guard = json.at("guard").get<std::string>();
    note.phase = json.at("phase").get<std::string>();
    note.choice = json.at("choice").get<std::string>();
    note.text = json.at("text").get<std::string>();
    return note;
}

} // namespace

std::string headerJson(const StoredRun& run) {
    const RunHeader& header = run.header;
    return dumped({{"started_ms", header.startedUnixMillis},
                   {"pilot", header.pilot},
                   {"program_version", header.programVersion},
                   {"aircraft_folder", header.aircraftFolder},
                   {"aircraft_sha256", sha256(header.aircraftSource)},
                   {"flow_id", header.flowId},
                   {"flow_title", header.flowTitle},
                   {"flow_sha256", sha256(header.flowSource)},
                   {"rig_title", header.rigTitle},
                   {"rig_sha256", sha256(header.rigSource)},
                   {"motion_source", header.motionSource},
                   {"length_us", micros(run.summary.length)},
                   {"judged_by", run.judgedBy},
                   {"tags", run.summary.tags}});
}

bool readHeader(std::string_view text, StoredRun& run) {
    return parsed(text, [&](const Json& json) {
        RunHeader& header = run.header;
        header.startedUnixMillis = wholeNumber<std::int64_t>(json.at("started_ms"));
        header.pilot = json.at("pilot").get<std::string>();
        header.programVersion = json.at("program_version").get<std::string>();
        header.aircraftFolder = json.at("aircraft_folder").get<std::string>();
        header.flowId = json.at("flow_id").get<std::string>();
        header.flowTitle = json.at("flow_title").get<std::string>();
        header.rigTitle = json.at("rig_title").get<std::string>();
        header.motionSource = json.at("motion_source").get<std::string>();
        // Where the flow lay on the other computer means nothing here.
        header.flowFile = header.aircraftFolder + "/" + header.flowId + ".toml";
        run.summary.length = timeOf(json.at("length_us"));
        run.summary.tags = json.at("tags").get<std::vector<std::string>>();
        run.judgedBy = json.at("judged_by").get<std::string>();
        if (json.at("aircraft_sha256").get<std::string>() != sha256(header.aircraftSource) ||
            json.at("flow_sha256").get<std::string>() != sha256(header.flowSource) ||
            json.at("rig_sha256").get<std::string>() != sha256(header.rigSource))
            throw Json::other_error::create(501, "a source is not the one that the header names", &json);
    });
}

std::string commandsJson(const std::vector<RunCommand>& commands) {
    Json all = Json::array();
    for (const RunCommand& command : commands)
        all.push_back({{"time_us", micros(command.time)}, {"kind", nameOf(command.kind)}, {"text", command.text}});
    return dumped(all);
}

bool readCommands(std::string_view text, std::vector<RunCommand>& commands) {
    return parsed(text, [&](const Json& json) {
        for (const Json& command : json) {
            const std::optional<CommandKind> kind = findCommandKind(command.at("kind").get<std::string>());
            if (!kind)
                throw Json::out_of_range::create(403, "no such command", &command);
            commands.push_back({timeOf(command.at("time_us")), *kind, command.at("text").get<std::string>()});
        }
    });
}

std::string notesJson(const std::vector<Note>& notes) {
    Json all = Json::array();
    for (const Note& note : notes)
        all.push_back(toJson(note));
    return dumped(all);
}

bool readNotes(std::string_view text, std::vector<Note>& notes) {
    return parsed(text, [&](const Json& json) {
        for (const Json& note : json)
            notes.push_back(noteOf(note));
    });
}

} // namespace flowhand
