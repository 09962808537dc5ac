#include <algorithm>
#include <cctype>
#include <filesystem>
#include <iterator>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/textfile.h"
#include "command/command.h"
#include "device/explain.h"
#include "device/inputs.h"
#include "device/recording.h"
#include "device/report.h"
#include "device/usagenames.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;
using Bytes = std::vector<std::uint8_t>;

struct DecodeOptions {
    std::string descriptor; ///< hexadecimal, or a file
    std::string reports;    ///< a file; empty: none
    bool asJson = false;
};

/// A file holds the bytes themselves, as sysfs has them, or hexadecimal, or is a recording.
Result<Bytes> descriptorOf(const std::string& hexOrFile) {
    std::error_code ignored;
    if (!std::filesystem::exists(hexOrFile, ignored)) {
        if (auto bytes = parseHex(hexOrFile))
            return std::move(*bytes);
        return failure("bad-hex",
                       "'" + hexOrFile +
                           "' is neither a file nor bytes in hexadecimal, as in \"05 01 09 04\" or \"0x05, 0x01\"");
    }
    const auto content = readFile(hexOrFile, kLargestRecorded);
    if (!content)
        return tl::unexpected(content.error());
    const bool isText = std::all_of(content->begin(), content->end(), [](unsigned char c) {
        return !std::iscntrl(c) || std::isspace(c); // every descriptor's own bytes have some of these: 05, 01 ...
    });
    if (!isText)
        return Bytes(content->begin(), content->end());
    auto recording = parseRecording(*content, hexOrFile);
    if (!recording)
        return tl::unexpected(recording.error());
    Bytes bytes = std::move(recording->descriptor);
    if (bytes.empty())
        for (const RecordedReport& line : recording->reports)
            bytes.insert(bytes.end(), line.bytes.begin(), line.bytes.end());
    return bytes;
}

Json jsonOf(const Bytes& bytes, const ReportDecoder& decoder) {
    const Descriptor& descriptor = decoder.descriptor();
    Json items = Json::array();
    for (const ExplainedItem& item : explainDescriptor(bytes))
        items.push_back({{"offset", item.offset}, {"bytes", hexText(item.bytes)}, {"text", item.text}});
    Json applications = Json::array();
    for (const Usage application : descriptor.applications())
        applications.push_back(
            {{"usage_page", pageOf(application)}, {"usage", idOf(application)}, {"name", usageName(application)}});
    Json reports = Json::array();
    for (const InputReport& report : descriptor.reports)
        reports.push_back({{"report_id", report.id}, {"bits", report.bits}});
    Json inputs = Json::array();
    for (const InputInfo& input : decoder.inputs())
        inputs.push_back({{"name", input.name},
                          {"kind", kindName(input.kind)},
                          {"report_id", input.key.reportId},
                          {"usage_page", input.key.usagePage},
                          {"usage", input.key.usage},
                          {"lowest", input.lowest},
                          {"highest", input.highest}});
    return {{"bytes", bytes.size()},
            {"has_report_ids", descriptor.hasReportIds},
            {"applications", applications},
            {"reports", reports},
            {"inputs", inputs},
            {"items", items}};
}

const char* fitText(ReportFit fit) {
    switch (fit) {
    case ReportFit::Exact:
        return "exact";
    case ReportFit::Truncated:
        return "truncated";
    case ReportFit::Overlong:
        return "longer than the descriptor says";
    case ReportFit::UnknownId:
        break;
    }
    return "unknown report id";
}

Json jsonOf(const RecordedReport& report, const ReportDecoder& decoder) {
    const ReportValues values = decoder.values(report.bytes);
    Json json = Json::object();
    if (report.time)
        json["time"] = seconds(*report.time);
    json["report_id"] = values.id.value_or(0);
    json["fit"] = fitText(values.fit);
    json["controls"] = Json::array();
    for (const ElementValue& value : values.elements) {
        const InputElement& element = decoder.descriptor().elements[value.element];
        json["controls"].push_back({{"report_id", element.reportId},
                                    {"usage_page", pageOf(element.usage)},
                                    {"usage", idOf(element.usage)},
                                    {"bit", element.bit},
                                    {"size", element.size},
                                    {"raw", value.raw},
                                    {"value", value.value ? Json(*value.value) : Json(nullptr)},
                                    {"null", !value.value}});
    }
    json["arrays"] = Json::array();
    for (const ArrayValue& array : values.arrays)
        json["arrays"].push_back({{"bit", decoder.descriptor().elements[array.element].bit}, {"usages", array.usages}});
    return json;
}

void printItems(std::ostream& out, const Bytes& bytes) {
    for (const ExplainedItem& item : explainDescriptor(bytes)) {
        const std::string offset = std::to_string(item.offset);
        const std::string hex = hexText(item.bytes);
        out << std::string(offset.size() < 5 ? 5 - offset.size() : 0, ' ') << offset << "  " << hex
            << std::string(hex.size() < 16 ? 16 - hex.size() : 1, ' ')
            << std::string(2 * static_cast<std::size_t>(item.depth), ' ') << item.text << "\n";
    }
}

void printInputs(std::ostream& out, const ReportDecoder& decoder) {
    out << "\n" << decoder.inputs().size() << " inputs\n";
    for (const InputInfo& input : decoder.inputs()) {
        out << "  " << input.name << ": " << kindName(input.kind) << " " << input.lowest << " to " << input.highest;
        if (input.key.reportId != 0)
            out << ", report " << int(input.key.reportId);
        out << "\n";
    }
}

void printReport(std::ostream& out, const RecordedReport& report, const ReportDecoder& decoder) {
    const ReportValues values = decoder.values(report.bytes);
    out << recordingLine(report);
    if (values.fit != ReportFit::Exact)
        out << "  (" << fitText(values.fit) << ")\n";
    for (const ElementValue& value : values.elements) {
        const InputElement& element = decoder.descriptor().elements[value.element];
        out << "  " << usageName(element.usage) << " = " << value.raw;
        if (!value.value)
            out << ", null state";
        else if (*value.value != value.raw)
            out << ", used as " << *value.value;
        if (value.value && element.unit != 0)
            out << ", physical " << element.physical(*value.value);
        out << "\n";
    }
    for (const ArrayValue& array : values.arrays) {
        out << "  asserted:";
        for (const Usage usage : array.usages)
            out << " " << usageName(usage);
        out << (array.usages.empty() ? " none\n" : "\n");
    }
}

int decode(CommandLine& line, const DecodeOptions& options) {
    const auto bytes = descriptorOf(options.descriptor);
    if (!bytes)
        return complain(line, bytes.error());
    Recording recording;
    if (!options.reports.empty()) {
        auto parsed = loadRecording(options.reports);
        if (!parsed)
            return complain(line, parsed.error());
        recording = std::move(*parsed);
    }
    auto descriptor = parseDescriptor(*bytes);
    if (!options.asJson)
        printItems(line.out, *bytes);
    if (!descriptor)
        return complain(line, descriptor.error());
    const ReportDecoder decoder(std::move(*descriptor));
    if (options.asJson)
        line.out << jsonOf(*bytes, decoder).dump() << "\n";
    else
        printInputs(line.out, decoder);
    for (const RecordedReport& report : recording.reports) {
        if (options.asJson)
            line.out << jsonOf(report, decoder).dump() << "\n";
        else
            printReport(line.out << "\n", report, decoder);
    }
    return kExitDone;
}

} // namespace

void addDecodeCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<DecodeOptions>();
    CLI::App* command = app.add_subcommand("decode", "Explain a HID report descriptor, and what its reports say");
    command->add_option("--descriptor", options->descriptor, "Bytes in hexadecimal, or a file that holds them")
        ->required()
        ->type_name("HEX|FILE");
    command
        ->add_option("--reports", options->reports,
                     "Reports in hexadecimal, one a line, with 'SECONDS:' before it where the time is known")
        ->type_name("FILE");
    command->add_flag("--json", options->asJson, "JSON lines: the descriptor, then each report");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return decode(line, *options);
        };
    });
}

} // namespace flowhand
