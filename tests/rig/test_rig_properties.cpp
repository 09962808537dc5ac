#include <sstream>

#include <QtTest>

#include <rapidcheck.h>

#include "rig/axismap.h"
#include "twinjet.h"

using namespace flowhand;

/// Properties over random rigs and readings.
class TestRigProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void inversionIsSymmetric();
    void valuesRiseWithTheCount();
    void pointsAreMetAndRise();
    void wantedValuesComeBack();
    void onlyChangesTravel();
    void sameReadingsGiveTheSameSamples();
    void advancingOftenerChangesNothing();
    void nothingIsHiddenForGood();
    void damagedFilesDoNoHarm();
};

namespace {

std::string axis(const std::string& signal, std::int64_t from, std::int64_t to, const std::string& keys) {
    return "[[control]]\nsignal = \"" + signal + "\"\nwiring = \"axis\"\ninput = \"X\"\nrange = [" +
           std::to_string(from) + ", " + std::to_string(to) + "]\n" + keys;
}

/// One control of every kind, on the bench's inputs.
const std::string kEverything = R"(
[[control]]
signal = "thrust_lever_1"
wiring = "axis"
input = "X"
range = [100, 4000]
noise = 1.5
spike_limit = 900
settle = "15 ms"
[[control]]
signal = "flap_lever"
wiring = "gates"
input = "Y"
band = 150
hysteresis = 50
median = "6 ms"
smooth = "20 ms"
gates = [
    { position = "up", at = 300 }, { position = "4", at = 1100 }, { position = "12", at = 2000 },
    { position = "22", at = 2900 }, { position = "34", at = 3700 },
]
[[control]]
signal = ["thrust_lever_2", "reverse_lever_2"]
wiring = "split_axis"
input = "Z"
ranges = [[1000, 4000], [900, 100]]
split = 950
hysteresis = 20
[[control]]
signal = "rudder_pedals"
wiring = "two_axes"
combine = "difference"
input = ["X", "Y"]
ranges = [[0, 4000], [4000, 0]]
[[control]]
signal = "tiller"
wiring = "axis"
input = "Z"
range = [4000, 50]
centre = 2000
dead_band = 30
spring_rate = 200
[[control]]
signal = "taxi_light"
wiring = "contact"
input = "button 1"
[[control]]
signal = "gear_lever"
wiring = "contact"
input = ["button 1", "button 2"]
combine = "all"
open = "down"
closed = "up"
[[control]]
signal = "takeoff_button"
wiring = "contact"
input = "button 3"
pulse = "80 ms"
[[control]]
signal = "spoiler_lever"
wiring = "on_off_on"
input = ["button 4", "button 5"]
first = "down"
centre = "armed"
second = "up"
[[control]]
signal = "autobrake"
wiring = "coded_switch"
code = "gray"
input = ["button 6", "button 7", "button 8"]
positions = ["off", "low", "medium", "high", "rejected"]
[[control]]
signal = "landing_lights"
wiring = "toggle"
input = "button 9"
start = "off"
[[control]]
signal = "fuel_lever_1"
wiring = "set_clear"
set = "button 10"
clear = "button 11"
on_set = "run"
on_clear = "off"
start = "off"
[[control]]
signal = "fuel_lever_2"
wiring = "selector"
contacts = [{ input = "button 12", value = "off" }, { input = "button 13", value = "run" }]
[[control]]
signal = "pitch_trim"
wiring = "encoder"
input = ["button 14", "button 15"]
start = "0 deg"
per_detent = "0.5 deg"
[[control]]
signal = "reverse_lever_1"
wiring = "hat"
input = "hat 1"
up = "100 %"
released = "0 %"
[[control]]
signal = "toe_brake_left"
wiring = "relative_wheel"
input = "Wheel"
start = "0 %"
per_count = "2 %"
[[control]]
signal = "reply_button"
wiring = "zones"
input = ["button 3", "button 4"]
zones = [{ closed = ["button 3", "button 4"], value = "on" }, { closed = ["button 3"], value = "off" },
    { closed = [], value = "off" }]
[[control]]
signal = "parking_brake"
wiring = "parking_latch"
pedals = ["X", "Y"]
ranges = [[0, 4000], [0, 4000]]
pull = "button 16"
start = "off"
)";

/// Random readings of the bench's device, in the order of their times; the first report has all inputs.
std::vector<Reading> someReadings(const std::vector<InputInfo>& inputs) {
    std::vector<Reading> readings;
    for (std::size_t i = 0; i < inputs.size(); ++i)
        readings.push_back({Time{}, 0, static_cast<std::uint16_t>(i), 0, false});
    Time time{};
    const int count = *rc::gen::inRange(20, 200);
    for (int i = 0; i < count; ++i) {
        time += std::chrono::microseconds(*rc::gen::element(0, 500, 3000, 12000, 90000, 700000));
        Reading reading{time, 0, static_cast<std::uint16_t>(*rc::gen::inRange<int>(0, static_cast<int>(inputs.size()))),
                        0, false};
        const InputInfo& input = inputs[reading.input];
        reading.raw = *rc::gen::inRange<std::int64_t>(input.lowest, input.highest + 1);
        reading.isNull = input.kind == InputKind::Hat && *rc::gen::arbitrary<bool>();
        readings.push_back(reading);
    }
    return readings;
}

std::vector<Sample> samplesOf(const std::vector<Reading>& readings, Duration period) {
    Bench bench(kEverything);
    std::vector<Sample> samples;
    Time advanced{};
    for (const Reading& reading : readings) {
        for (; period > Duration{} && advanced + period < reading.time; advanced += period)
            bench.rig().advance(advanced, samples);
        bench.rig().take(reading, samples);
    }
    bench.rig().advance(readings.back().time + std::chrono::seconds(5), samples);
    return samples;
}

} // namespace

void TestRigProperties::inversionIsSymmetric() {
    const bool ok = rc::check("raw r on [a, b] reads as M - r on [M - a, M - b]", [] {
        const auto a = *rc::gen::inRange<std::int64_t>(0, 1500);
        const auto b = *rc::gen::inRange<std::int64_t>(2500, 4096);
        const auto centre = *rc::gen::inRange<std::int64_t>(1900, 2200);
        const auto dead = *rc::gen::inRange<std::int64_t>(0, 100);
        const auto end = *rc::gen::inRange<std::int64_t>(0, 100);
        const auto keys = [&](std::int64_t c) {
            return "centre = " + std::to_string(c) + "\ndead_band = " + std::to_string(dead) +
                   "\nend_band = " + std::to_string(end) + "\n";
        };
        Bench plain(axis("tiller", a, b, keys(centre)));
        Bench inverted(axis("tiller", 4095 - a, 4095 - b, keys(4095 - centre)));
        for (const std::int64_t raw :
             *rc::gen::container<std::vector<std::int64_t>>(rc::gen::inRange<std::int64_t>(0, 4096))) {
            plain.send(0, "X", raw);
            inverted.send(0, "X", 4095 - raw);
            RC_ASSERT(plain.number("tiller") == inverted.number("tiller"));
        }
    });
    QVERIFY(ok);
}

void TestRigProperties::valuesRiseWithTheCount() {
    const bool ok = rc::check("a higher count never reads lower", [] {
        const auto centre = *rc::gen::inRange<std::int64_t>(800, 3200);
        Bench bench(axis("tiller", 100, 4000, "centre = " + std::to_string(centre) + "\ndead_band = 50\n"));
        double before = -71.0;
        std::int64_t raw = 0;
        for (const std::int64_t step :
             *rc::gen::container<std::vector<std::int64_t>>(60, rc::gen::inRange<std::int64_t>(0, 140))) {
            raw = std::min<std::int64_t>(4095, raw + step);
            bench.send(0, "X", raw);
            RC_ASSERT(bench.number("tiller") >= before);
            before = bench.number("tiller");
        }
    });
    QVERIFY(ok);
}

void TestRigProperties::pointsAreMetAndRise() {
    const bool ok =
        rc::check("any points: each reads its value, between them no count reads lower than one below it, "
                  "and a wish for a value comes back within one count",
                  [] {
                      const bool isInverted = *rc::gen::arbitrary<bool>();
                      std::vector<AxisMap::Point> points = {{*rc::gen::inRange<std::int64_t>(0, 500), -70.0}};
                      const int count = *rc::gen::inRange(1, 8);
                      for (int i = 0; i < count; ++i)
                          points.push_back({points.back().at + *rc::gen::inRange<std::int64_t>(5, 400),
                                            points.back().value + *rc::gen::inRange(1, 200) / 10.0});
                      std::string keys;
                      for (const AxisMap::Point& point : points) {
                          std::ostringstream value;
                          value << point.value;
                          keys += "{ at = " + std::to_string(isInverted ? 4095 - point.at : point.at) + ", value = \"" +
                                  value.str() + " deg\" },\n";
                      }
                      Bench bench("[[control]]\nsignal = \"tiller\"\nwiring = \"axis\"\ninput = \"X\"\npoints = [\n" +
                                  keys + "]\n");
                      RC_ASSERT(bench.problems().empty());
                      const auto read = [&](std::int64_t raw) {
                          bench.send(0, "X", isInverted ? 4095 - raw : raw);
                          return bench.number("tiller");
                      };
                      double before = -70.0;
                      for (std::int64_t raw = points.front().at; raw <= points.back().at; ++raw) {
                          const double now = read(raw);
                          RC_ASSERT(now >= before);
                          before = now;
                      }
                      for (std::size_t i = 0; i < points.size(); ++i) {
                          const double slope = i == 0 ? 0.0
                                                      : (points[i].value - points[i - 1].value) /
                                                            static_cast<double>(points[i].at - points[i - 1].at);
                          RC_ASSERT(std::fabs(read(points[i].at) - points[i].value) <= std::max(slope, 1e-9) / 2);
                          const double wanted = i == 0 ? -70.0 : (points[i].value + points[i - 1].value) / 2;
                          const auto readings = bench.rig().readingsFor(twinJet().id("tiller"), Value::number(wanted));
                          const std::int64_t raw = readings.front().raw;
                          RC_ASSERT(std::fabs(read(isInverted ? 4095 - raw : raw) - wanted) <= slope + 1e-9);
                      }
                  });
    QVERIFY(ok);
}

void TestRigProperties::wantedValuesComeBack() {
    const bool ok = rc::check("readings for a value make that value, within what one count is", [] {
        Bench bench(kEverything);
        RC_ASSERT(bench.problems().empty());
        Time time{};
        std::vector<Sample> samples;
        for (std::size_t i = 0; i < bench.inputs().size(); ++i)
            bench.rig().take({time, 0, static_cast<std::uint16_t>(i),
                              bench.inputs()[i].kind == InputKind::Axis ? 2000 : 0,
                              bench.inputs()[i].kind == InputKind::Hat},
                             samples);
        const TwinJet& jet = twinJet();
        const std::vector<std::string> names = {
            "thrust_lever_1", "thrust_lever_2", "reverse_lever_2", "rudder_pedals",  "tiller",         "flap_lever",
            "taxi_light",     "gear_lever",     "spoiler_lever",   "autobrake",      "landing_lights", "fuel_lever_1",
            "fuel_lever_2",   "pitch_trim",     "reverse_lever_1", "toe_brake_left", "parking_brake"};
        for (int i = 0; i < 12; ++i) {
            const SignalId id = jet.id(*rc::gen::elementOf(names));
            const Signal& signal = jet.signals[id];
            Value wanted = Value::onOff(*rc::gen::arbitrary<bool>());
            if (signal.kind == SignalKind::Position)
                wanted = Value::position(*rc::gen::inRange<int>(0, static_cast<int>(signal.positions.size())));
            else if (signal.name == "reverse_lever_1")
                wanted = Value::number(*rc::gen::element(0.0, 100.0));
            else if (signal.kind == SignalKind::Number)
                wanted =
                    Value::number(signal.lowest + (signal.highest - signal.lowest) * *rc::gen::inRange(0, 101) / 100);
            const std::vector<Reading> readings = bench.rig().readingsFor(id, wanted);
            RC_ASSERT(!readings.empty());
            time += std::chrono::seconds(2);
            bench.rig().advance(time, samples);
            for (Reading reading : readings) {
                reading.time += time;
                bench.rig().take(reading, samples);
            }
            time += std::chrono::seconds(20); // presses and clicks take their time
            bench.rig().advance(time, samples);
            Value now;
            for (const Sample& sample : samples)
                if (sample.signal == id)
                    now = sample.value;
            if (signal.kind != SignalKind::Number) {
                RC_ASSERT(now == wanted);
            } else {
                // Half a step, or what the noise of 1.5 counts may hold back.
                const double most = signal.name == "pitch_trim" ? 0.25 : signal.name == "toe_brake_left" ? 1.0 : 0.26;
                RC_ASSERT(std::fabs(now.number() - wanted.number()) <= most + 1e-9);
            }
        }
    });
    QVERIFY(ok);
}

void TestRigProperties::onlyChangesTravel() {
    const bool ok = rc::check("a sample differs from the one before, and times never go back", [] {
        const Bench bench(kEverything);
        const std::vector<Sample> samples = samplesOf(someReadings(bench.inputs()), Duration{});
        std::vector<Value> values(twinJet().controlCount);
        Time time{};
        for (const Sample& sample : samples) {
            RC_ASSERT(!(values[indexOf(sample.signal)] == sample.value));
            RC_ASSERT(sample.time >= time);
            RC_ASSERT(sample.origin == Origin::Device);
            RC_ASSERT(sample.control != kNoControl);
            values[indexOf(sample.signal)] = sample.value;
            time = sample.time;
        }
    });
    QVERIFY(ok);
}

void TestRigProperties::sameReadingsGiveTheSameSamples() {
    const bool ok = rc::check("the same readings give the same samples; said again, they give none", [] {
        Bench bench(kEverything);
        const std::vector<Reading> readings = someReadings(bench.inputs());
        RC_ASSERT(samplesOf(readings, Duration{}) == samplesOf(readings, Duration{}));
        std::vector<Sample> samples;
        for (const Reading& reading : readings) {
            bench.rig().take(reading, samples);
            const std::size_t before = samples.size();
            bench.rig().take(reading, samples);
            RC_ASSERT(samples.size() == before);
        }
    });
    QVERIFY(ok);
}

void TestRigProperties::advancingOftenerChangesNothing() {
    const bool ok = rc::check("timers fire at their own times, however often the rig is advanced", [] {
        const Bench bench(kEverything);
        const std::vector<Reading> readings = someReadings(bench.inputs());
        RC_ASSERT(samplesOf(readings, Duration{}) == samplesOf(readings, std::chrono::milliseconds(7)));
    });
    QVERIFY(ok);
}

void TestRigProperties::nothingIsHiddenForGood() {
    const bool ok = rc::check("what is told is never further than the least change from what is so", [] {
        const int noise = *rc::gen::inRange(0, 8);
        Bench bench(axis("thrust_lever_1", 0, 4000, "noise = " + std::to_string(noise) + "\n"));
        std::int64_t raw = 2000;
        double time = 0;
        for (const std::int64_t step :
             *rc::gen::container<std::vector<std::int64_t>>(50, rc::gen::inRange<std::int64_t>(-30, 31))) {
            raw = std::clamp<std::int64_t>(raw + step, 0, 4000);
            bench.send(time += 1, "X", raw);
            RC_ASSERT(std::fabs(bench.number("thrust_lever_1") * 40 - double(raw)) < std::max(1, 3 * noise));
        }
        bench.send(time += 1, "X", 4000);
        RC_ASSERT(bench.number("thrust_lever_1") == 100.0);
    });
    QVERIFY(ok);
}

void TestRigProperties::damagedFilesDoNoHarm() {
    const bool ok = rc::check("a damaged file is refused with an error, or is a rig that works", [] {
        std::string source =
            "format = 1\ntitle = \"T\"\n[[device]]\nname = \"unit\"\nid = \"1209:F101\"\n" + kEverything;
        const std::vector<std::string> pieces = {
            "",     "\"\"",          "[]",      "-1", "0",      "1e9",   "9223372036854775807",
            "true", "[[control]]\n", "\"ask\"", "\n", "[0, 0]", "\"X\"", "{}"};
        const int cuts = *rc::gen::inRange(1, 4);
        for (int i = 0; i < cuts; ++i) {
            // A value of some key, or anything from somewhere to somewhere, becomes something else.
            std::size_t from = *rc::gen::inRange<std::size_t>(0, source.size());
            std::size_t to = std::min(source.size(), from + *rc::gen::inRange<std::size_t>(0, 12));
            if (*rc::gen::arbitrary<bool>() && source.find(" = ", from) != std::string::npos) {
                from = source.find(" = ", from) + 3;
                to = std::min(source.find('\n', from), source.size());
            }
            source.replace(from, to - from, *rc::gen::elementOf(pieces));
        }
        Problems problems;
        std::optional<Rig> rig =
            Rig::parse(source, "damaged.toml", twinJet().signals, twinJet().controlCount, problems);
        RC_ASSERT(rig.has_value() != problems.hasErrors());
        const Bench bench(kEverything);
        if (!rig || !rig->connect(0, bench.inputs()))
            return;
        std::vector<Sample> samples;
        for (const Reading& reading : someReadings(bench.inputs()))
            rig->take(reading, samples);
        for (std::uint32_t i = 0; i < twinJet().controlCount; ++i)
            static_cast<void>(rig->readingsFor(SignalId{i}, Value::number(1)));
        RC_ASSERT(rig->faults().size() <= rig->controlNames().size());
    });
    QVERIFY(ok);
}

QTEST_APPLESS_MAIN(TestRigProperties)
#include "test_rig_properties.moc"
