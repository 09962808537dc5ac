#include "base/textfile.h"

#include <filesystem>
#include <fstream>

namespace flowhand {

Result<std::string> readFile(const std::string& path, std::size_t largest) {
    std::error_code problem;
    const std::filesystem::file_status status = std::filesystem::status(path, problem);
    if (std::filesystem::is_directory(status))
        return failure("unreadable-file", "this is a folder; name a file in it", {path});
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status))
        return failure("unreadable-file", "this is a pipe or a device, not a file; save its content in a file first",
                       {path});
    std::ifstream stream(path, std::ios::binary);
    if (!stream)
        return failure("unreadable-file", "this file cannot be opened; check that it exists and that you may read it",
                       {path});
    std::string content;
    char block[65536];
    while (stream.read(block, sizeof block) || stream.gcount() > 0) {
        content.append(block, static_cast<std::size_t>(stream.gcount()));
        if (content.size() > largest)
            return failure("file-too-large",
                           "this file is larger than " + std::to_string(largest >> 20) +
                               " MiB and was not read; is it the right one?",
                           {path});
    }
    if (stream.bad())
        return failure("unreadable-file", "this file cannot be read to its end", {path});
    return content;
}

Status writeFile(const std::string& path, const std::string& text) {
    std::ofstream out(path, std::ios::binary | std::ios::trunc);
    out << text << std::flush;
    if (!out)
        return failure("unwritable-file", "cannot write it: is the folder there, and the disk not full?", {path});
    return {};
}

} // namespace flowhand
