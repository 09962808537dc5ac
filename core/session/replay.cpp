#include "session/replay.h"

#include "base/phrasejson.h"

#include <utility>

namespace flowhand {

void apply(Session& session, const RunCommand& command) {
    switch (command.kind) {
    case CommandKind::Start:
        session.start(command.time);
        break;
    case CommandKind::Waive:
        session.waive(command.time);
        break;
    case CommandKind::Hold:
        session.hold(command.time, command.text);
        break;
    case CommandKind::Gap:
        session.gap(command.time, phraseOfText(command.text));
        break;
    case CommandKind::Resume:
        session.resume(command.time);
        break;
    case CommandKind::Repeat:
        session.repeat(command.time);
        break;
    case CommandKind::Jump:
        session.jump(command.time, command.text);
        break;
    case CommandKind::Stop:
        session.stop(command.time);
        break;
    case CommandKind::Unobserved:
        session.unobserved(command.time, command.text);
        break;
    case CommandKind::CarryOn:
        session.carryOn(command.time);
        break;
    case CommandKind::Event:
        session.happen(command.time, command.text);
        break;
    case CommandKind::Place:
        session.place(command.time, command.text);
        break;
    }
}

JudgedRun judgeAgain(const Aircraft& aircraft, const Flow& flow, const SessionSetup& setup,
                     const std::vector<Sample>& samples, const std::vector<RunCommand>& commands, Time end) {
    Session session(aircraft, flow, setup);
    std::size_t sample = 0;
    std::size_t command = 0;
    while (sample < samples.size() || command < commands.size()) {
        const Time nextSample = sample < samples.size() ? samples[sample].time : kForever;
        if (command < commands.size() && commands[command].time <= nextSample) {
            apply(session, commands[command++]);
            continue;
        }
        std::size_t last = sample;
        while (last < samples.size() && samples[last].time == nextSample)
            ++last;
        session.take(nextSample, std::span(samples).subspan(sample, last - sample));
        sample = last;
    }
    session.advance(end);
    JudgedRun judgement{session.takeEvents(), {}, session.score(), session.results()};
    std::vector<std::string> ids;
    for (const Step& step : flow.steps)
        ids.push_back(step.id);
    for (const Event& event : judgement.events)
        judgement.lines.push_back(toJson(event, aircraft.signals, ids));
    return judgement;
}

} // namespace flowhand
