// Writes the frozen database of the newest schema: makefrozen FILE. Run once before a new migration is released.
#include <filesystem>
#include <iostream>

#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

int main(int count, char** arguments) {
    if (count != 2 || std::filesystem::exists(arguments[1])) {
        std::cerr << "usage: makefrozen NEW-FILE\n";
        return 1;
    }
    flowhand::Result<Store> store = Store::open(arguments[1]);
    if (!store)
        return 1;
    std::unique_ptr<Recorder> recorder = store->recorder();
    Event started;
    Event ended;
    ended.kind = EventKind::RunEnded;
    ended.time = 12s;
    bool isWritten = recorder->begin(testHeader()).has_value();
    isWritten &= recorder->command({0s, CommandKind::Start, ""}).has_value();
    isWritten &= recorder->events(std::vector<Event>{started}).has_value();
    isWritten &= recorder->samples(testSamples(12)).has_value();
    isWritten &= recorder->command({12s, CommandKind::Stop, ""}).has_value();
    isWritten &= recorder->events(std::vector<Event>{ended}).has_value();
    isWritten &= recorder->finish(12s, testScore(), testResults()).has_value();
    recorder = store->recorder();
    isWritten &= recorder->begin(testHeader()).has_value();
    isWritten &= recorder->samples(testSamples(7)).has_value();
    recorder.reset();
    return isWritten ? 0 : 1;
}
