#include "bench/wiringedit.h"

#include <algorithm>
#include <utility>

#include "base/names.h"
#include "base/tomlfile.h"
#include "bench/wiringparts.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

std::string_view trimmed(std::string_view line) {
    while (!line.empty() && (line.front() == ' ' || line.front() == '\t'))
        line.remove_prefix(1);
    return line;
}

bool isHeader(const std::string& line, std::string_view name) {
    const std::string_view text = trimmed(line);
    return text.substr(0, 2) == "[[" && trimmed(text.substr(2)).substr(0, name.size()) == name;
}

/// Lines [begin, end) of one table, counted from 0; comments that stand right before the next table are the next's.
struct Block {
    std::size_t begin = 0;
    std::size_t end = 0;
};

/// Where every table of the file begins, by rising line.
std::vector<std::size_t> tableLines(const TomlNode& root) {
    std::vector<std::size_t> lines;
    for (const TomlMember& member : root.members)
        if (member.second.kind == TomlNode::Kind::Array)
            for (const TomlNode& item : member.second.items)
                if (item.kind == TomlNode::Kind::Table && item.place.line > 0)
                    lines.push_back(static_cast<std::size_t>(item.place.line) - 1);
    std::sort(lines.begin(), lines.end());
    return lines;
}

Block blockAt(std::size_t begin, const std::vector<std::size_t>& tables, const std::vector<std::string>& lines) {
    const auto next = std::upper_bound(tables.begin(), tables.end(), begin);
    Block block{begin, next == tables.end() ? lines.size() : *next};
    while (block.end > block.begin + 1 &&
           (trimmed(lines[block.end - 1]).empty() || trimmed(lines[block.end - 1]).front() == '#'))
        --block.end;
    return block;
}

bool makes(const TomlNode& control, const std::vector<std::string>& names) {
    const TomlNode* signal = control.find("signal");
    const auto isOne = [&](const TomlNode& node) {
        return std::find(names.begin(), names.end(), node.text) != names.end();
    };
    return signal != nullptr && (isOne(*signal) || std::any_of(signal->items.begin(), signal->items.end(), isOne));
}

std::string deviceText(const WiringDevice& device) {
    std::string text = "[[device]]\nname = " + quoted(device.name) +
                       "\nid = " + quoted(idText(device.wish.vendor, device.wish.product)) + "\n";
    if (!device.wish.serial.empty())
        text += "serial = " + quoted(device.wish.serial) + "\n";
    else if (!device.wish.port.empty())
        text += "port = " + quoted(device.wish.port) + "\n";
    return text;
}

/// Inputs of the control's own device need not name it.
std::string withoutDevice(std::string keys, const std::string& device) {
    const std::string full = quoted(device + ": ");
    const std::string prefix = full.substr(0, full.size() - 1);
    for (std::size_t at = 0; (at = keys.find(prefix, at)) != std::string::npos; ++at)
        keys.replace(at, prefix.size(), "\"");
    return keys;
}

std::string controlText(const std::string& name, const std::vector<std::string>& signals,
                        const WiringProposal& proposal, const WiringDevice& device) {
    std::vector<std::string> words;
    for (const std::string& signal : signals)
        words.push_back(quoted(signal));
    std::string text = "[[control]]\n";
    if (!name.empty())
        text += "name = " + quoted(name) + "\n";
    text += "signal = " + (words.size() == 1 ? words.front() : "[" + joined(words, ", ") + "]") + "\n";
    return text + "device = " + quoted(device.name) + "\nwiring = " + quoted(proposal.wiring) + "\n" +
           withoutDevice(proposal.keys, device.name);
}

std::string textOf(const std::vector<std::string>& lines, std::size_t begin, std::size_t end) {
    std::string text;
    for (std::size_t i = begin; i < end; ++i)
        text += lines[i] + "\n";
    return text;
}

} // namespace

Result<std::string> withControl(const std::string& source, const std::string& title, const WiringWish& wish,
                                const SignalTable& signals, const WiringProposal& proposal,
                                const std::vector<WiringDevice>& devices) {
    std::vector<std::string> names;
    for (const SignalId id : wish.signals)
        names.push_back(signals[id].name);
    const std::string start = source.empty() ? "format = 1\ntitle = " + quoted(title) + "\n" : source;
    const Result<TomlFile> toml = TomlFile::parse(start, {});
    if (!toml)
        return tl::unexpected<Error>(toml.error());
    const std::vector<std::string> lines = linesOf(start);
    const std::vector<std::size_t> tables = tableLines(toml->root());
    std::vector<Block> old;
    std::string name;
    if (const TomlNode* controls = toml->root().find("control")) {
        for (const TomlNode& control : controls->items) {
            const auto line = static_cast<std::size_t>(std::max(control.place.line, 1)) - 1;
            if (line >= lines.size() || !isHeader(lines[line], "control"))
                return failure("not-editable", "this rig file's controls are not written as [[control]] tables; write "
                                               "them so, or wire this one by hand");
            if (!makes(control, names))
                continue;
            old.push_back(blockAt(line, tables, lines));
            if (const TomlNode* label = control.find("name"))
                name = label->text;
        }
    }
    std::string added;
    for (const InputPlace place : proposal.inputs)
        if (const WiringDevice& device = devices[place.device];
            device.isNew && added.find("name = " + quoted(device.name) + "\n") == std::string::npos)
            added += deviceText(device) + "\n";
    const std::string control = controlText(name, names, proposal, devices[proposal.inputs.front().device]);
    std::string text;
    std::size_t at = 0;
    for (const Block& block : old) {
        text += textOf(lines, at, block.begin);
        if (&block == &old.front())
            text += added + control;
        at = block.end;
    }
    text += textOf(lines, at, lines.size());
    return old.empty() ? text + "\n" + added + control : text;
}

std::vector<WiringConflict> conflictsOf(const RigFile& rig, SignalId signal) {
    std::vector<WiringConflict> conflicts;
    const auto owner = std::find_if(rig.controls.begin(), rig.controls.end(), [&](const auto& control) {
        return std::find(control->signals().begin(), control->signals().end(), signal) != control->signals().end();
    });
    if (owner == rig.controls.end())
        return conflicts;
    for (const auto& other : rig.controls) {
        if (other == *owner)
            continue;
        for (const InputRef& mine : (*owner)->inputs())
            for (const InputRef& theirs : other->inputs())
                if (mine.device == theirs.device && mine.name == theirs.name &&
                    (!mine.hatDirection || !theirs.hatDirection || *mine.hatDirection == *theirs.hatDirection))
                    conflicts.push_back({rig.devices[mine.device].name + ": " + mine.name, other->name()});
    }
    return conflicts;
}

} // namespace flowhand
