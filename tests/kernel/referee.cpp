// Lets the kernel judge our decoder: makes each sample device, sends it reports, and holds what the kernel's event
// nodes then show against what our decoder says. For the guest; needs /dev/uhid.
//
//   referee RIGFOLDER
//
// Prints for each device the line 'device: NAME', lines 'wrong: TEXT', lines 'deviates: ID', and
// 'done: REPORTS COMPARISONS'. The exit status is 0 also where something is wrong.

#include <algorithm>
#include <iostream>
#include <random>

#include "device/inputs.h"
#include "device/recording.h"
#include "device/report.h"
#include "evdevnode.h"
#include "kernelview.h"
#include "refereecorpus.h"
#include "uhiddevice.h"

using namespace flowhand;

namespace {

using Bytes = std::vector<std::uint8_t>;

constexpr std::size_t kRandomReports = 300; // of each report id
constexpr std::size_t kMostWrong = 8;       // told of a device
constexpr std::uint32_t kSeed = 20240607;   // any; the same reports in every run

void setBits(Bytes& bytes, std::uint32_t bit, std::uint32_t size, std::int64_t value) {
    for (std::uint32_t i = 0; i < std::min(size, 32u); ++i) {
        const std::uint32_t at = bit + i;
        const auto mask = static_cast<std::uint8_t>(1u << (at % 8));
        const bool isSet = (static_cast<std::uint64_t>(value) >> i) & 1;
        bytes[at / 8] = static_cast<std::uint8_t>(isSet ? bytes[at / 8] | mask : bytes[at / 8] & ~mask);
    }
}

/// Reports that try the edges of every field, and random ones.
class Reports {
public:
    explicit Reports(const Descriptor& descriptor) : m_descriptor(descriptor), m_random(kSeed) {
        for (const InputReport& report : descriptor.reports) {
            if (report.bits == 0)
                continue;
            addEdges(report);
        }
        for (std::size_t i = 0; i < kRandomReports; ++i)
            for (const InputReport& report : descriptor.reports)
                if (report.bits > 0)
                    addRandom(report, i);
    }

    std::vector<Bytes> all;

private:
    void add(const InputReport& report, Bytes data) {
        if (m_descriptor.hasReportIds)
            data.insert(data.begin(), report.id);
        all.push_back(std::move(data));
    }

    void addEdges(const InputReport& report) {
        for (const std::uint8_t fill : {0x00, 0xFF, 0x55, 0xAA})
            add(report, Bytes(report.bytes(), fill));
        std::set<std::pair<std::uint32_t, std::uint32_t>> tried;
        for (const InputElement& element : m_descriptor.elements) {
            if (element.reportId != report.id)
                continue;
            for (const std::int64_t value : {element.lowest, element.highest, element.lowest - 1, element.highest + 1,
                                             (element.lowest + element.highest) / 2,
                                             std::int64_t(1) << (element.size % 33 == 0 ? 31 : element.size % 33 - 1)})
                for (const std::uint8_t fill : {0x00, 0xFF}) {
                    Bytes data(report.bytes(), fill);
                    setBits(data, element.bit, element.size, value);
                    add(report, std::move(data));
                }
        }
    }

    /// Every second one with most fields in their ranges, every eighth longer than the descriptor says.
    void addRandom(const InputReport& report, std::size_t nth) {
        Bytes data(report.bytes() + (nth % 8 == 7 ? 3 : 0));
        for (std::uint8_t& byte : data)
            byte = static_cast<std::uint8_t>(m_random());
        for (const InputElement& element : m_descriptor.elements) {
            if (nth % 2 == 0 || element.reportId != report.id || m_random() % 8 == 0)
                continue;
            std::uniform_int_distribution<std::int64_t> inRange(element.lowest, element.highest);
            for (std::uint32_t slot = 0; slot < element.count; ++slot)
                setBits(data, element.bit + slot * element.size, element.size, inRange(m_random));
        }
        add(report, std::move(data));
    }

    const Descriptor& m_descriptor;
    std::mt19937 m_random;
};

class Match {
public:
    Match(const SampleDevice& sample, std::size_t number)
        : m_sample(sample), m_port("referee/" + std::to_string(number)) {}

    void play() {
        std::cout << "device: " << m_sample.name << '\n';
        const auto bytes = parseHex(m_sample.descriptor);
        const auto descriptor =
            bytes ? parseDescriptor(*bytes) : failure("bad-hex", "the descriptor is not hexadecimal");
        if (!descriptor) {
            wrong(descriptor.error().message);
            return;
        }
        UhidDevice device({m_sample.name, 0x1209, 0x0001, m_port, "", *bytes});
        ReportDecoder decoder(*descriptor);
        std::vector<EvdevNode> nodes = evdevNodesAt(m_port);
        KernelView view(m_sample, decoder, nodes.empty() ? decltype(nodes.front().keys()){} : nodes.front().keys());
        if (nodes.size() != view.nodeCount()) {
            wrong("the kernel made " + std::to_string(nodes.size()) + " event nodes, we expect " +
                  std::to_string(view.nodeCount()));
            return;
        }
        compareMapping(view, nodes);
        m_states.resize(decoder.inputs().size());
        Reports reports(decoder.descriptor());
        std::vector<Bytes> all;
        for (const std::string& hex : m_sample.reports)
            all.push_back(parseHex(hex).value_or(Bytes{}));
        all.insert(all.end(), reports.all.begin(), reports.all.end());
        for (const Bytes& report : all) {
            device.send(report);
            takeReport(report, decoder, view);
            compareValues(report, view, nodes);
        }
        for (const std::string& id : m_deviations)
            std::cout << "deviates: " << id << '\n';
        std::cout << "done: " << all.size() << ' ' << m_comparisons << std::endl;
    }

private:
    void wrong(const std::string& text) {
        if (++m_wrong <= kMostWrong)
            std::cout << "wrong: " << text << '\n';
    }

    void compareMapping(const KernelView& view, const std::vector<EvdevNode>& nodes) {
        m_deviations = view.deviations();
        for (const std::string& name : view.unexplained())
            wrong("the kernel does not show " + name);
        for (std::size_t i = 0; i < nodes.size(); ++i) {
            std::set<EventCode> expected;
            for (const ShownControl& shown : view.shown())
                if (shown.node == i)
                    expected.insert(shown.code);
            for (const EventCode& code : expected)
                if (nodes[i].codes().count(code) == 0)
                    wrong("node " + std::to_string(i) + " of the kernel does not have " + codeText(code));
            for (const EventCode& code : nodes[i].codes())
                if (expected.count(code) == 0)
                    wrong("node " + std::to_string(i) + " of the kernel has " + codeText(code) +
                          ", which is no control of ours");
        }
        for (const ShownControl& shown : view.shown())
            if (shown.expectedRange && nodes[shown.node].codes().count(shown.code) != 0)
                compareRange(shown, nodes[shown.node].range(shown.code.second));
        for (const EvdevNode& node : nodes)
            if (node.takeFuzzOff())
                m_deviations.insert(deviation::kFuzz);
    }

    void compareRange(const ShownControl& shown, EvdevNode::Range kernels) {
        ++m_comparisons;
        const auto text = [](EvdevNode::Range range) {
            return std::to_string(range.lowest) + ".." + std::to_string(range.highest);
        };
        if (kernels != *shown.expectedRange)
            wrong(shown.name + " (" + codeText(shown.code) + "): our range " + text(*shown.ourRange) +
                  ", the kernel's " + text(kernels) +
                  (shown.ourRange == shown.expectedRange
                       ? ""
                       : ", where a deviation foretells " + text(*shown.expectedRange)));
    }

    /// Both ways of decoding, which have to agree with each other before the kernel is asked.
    void takeReport(const Bytes& report, ReportDecoder& decoder, KernelView& view) {
        m_changes.clear();
        decoder.decode(report, m_changes);
        for (const InputChange& change : m_changes)
            m_states[change.input] = {true, change.isNull, change.raw};
        const ReportValues values = decoder.values(report);
        const InputMap map = makeInputs(decoder.descriptor());
        for (const ElementValue& value : values.elements) {
            const std::uint16_t input = map.elements[value.element].input;
            const InputKind kind = decoder.inputs()[input].kind;
            const KernelView::InputState& state = m_states[input];
            const bool isNullHat = kind == InputKind::Hat && !value.value && state.isNull;
            const bool isSame = value.value ? !state.isNull && state.raw == *value.value : kind == InputKind::Axis;
            if (kind != InputKind::Relative && !isNullHat && !isSame)
                wrong("report " + hexText(report) + ": " + decoder.inputs()[input].name +
                      " is not the same by decode() and by values()");
        }
        const std::span<const std::uint8_t> whole(report);
        view.take(values, decoder.descriptor().hasReportIds ? whole.subspan(1) : whole, m_states);
    }

    void compareValues(const Bytes& report, const KernelView& view, std::vector<EvdevNode>& nodes) {
        std::vector<const std::map<EventCode, std::int64_t>*> kernels;
        for (EvdevNode& node : nodes)
            kernels.push_back(&node.values());
        for (const ShownControl& shown : view.shown()) {
            const auto at = kernels[shown.node]->find(shown.code);
            if (at == kernels[shown.node]->end() || shown.inputs.empty())
                continue;
            ++m_comparisons;
            const std::int64_t ours = shown.ours.value_or(at->second); // a control that said nothing yet
            const char* why = shown.whyNow ? shown.whyNow : shown.why;
            if (why && at->second == shown.expected && ours != at->second)
                m_deviations.insert(why);
            if (at->second != shown.expected || (ours != at->second && !why))
                wrong(
                    "report " + hexText(report) + ": " + shown.name + " (" + codeText(shown.code) + "): ours " +
                    std::to_string(ours) + ", the kernel's " + std::to_string(at->second) +
                    (shown.expected == ours ? "" : ", where a deviation foretells " + std::to_string(shown.expected)));
        }
    }

    const SampleDevice& m_sample;
    const std::string m_port;
    std::vector<KernelView::InputState> m_states;
    std::vector<InputChange> m_changes;
    std::set<std::string> m_deviations;
    std::size_t m_wrong = 0;
    std::size_t m_comparisons = 0;
};

} // namespace

int main(int argc, char** argv) {
    if (argc != 2)
        giveUp("usage: referee RIGFOLDER");
    std::size_t number = 0;
    const std::vector<SampleDevice> samples = sampleDevices(argv[1]);
    for (const SampleDevice& sample : samples)
        Match(sample, ++number).play();
}
