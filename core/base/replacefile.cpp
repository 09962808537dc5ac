#include "base/replacefile.h"

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace flowhand {

namespace {

Status saveFailure(const std::string& what, const std::string& path) {
    return failure("save-failed", what + ": " + std::strerror(errno) + "; the old file is as it was", {path});
}

/// A file beside the one it is to replace; removed again unless it has taken its place.
class Replacement {
public:
    explicit Replacement(std::string target) : m_target(std::move(target)), m_path(m_target + ".XXXXXX") {
        m_descriptor = ::mkstemp(m_path.data());
    }
    ~Replacement() {
        if (m_descriptor >= 0)
            ::close(m_descriptor);
        if (m_descriptor >= 0 && !m_isInPlace)
            ::unlink(m_path.c_str());
    }
    Replacement(const Replacement&) = delete;
    Replacement& operator=(const Replacement&) = delete;

    [[nodiscard]] bool isOpen() const { return m_descriptor >= 0; }

    /// mkstemp makes a file for the owner alone; the target's mode is kept, a new file gets the usual one.
    [[nodiscard]] bool takeMode() {
        struct stat now {};
        const mode_t mode = ::stat(m_target.c_str(), &now) == 0 ? now.st_mode & 07777u : 0644u;
        return ::fchmod(m_descriptor, mode) == 0;
    }

    [[nodiscard]] bool write(const std::string& text) {
        for (std::size_t done = 0; done < text.size();) {
            const ssize_t count = ::write(m_descriptor, text.data() + done, text.size() - done);
            if (count < 0 && errno != EINTR)
                return false;
            done += count > 0 ? static_cast<std::size_t>(count) : 0;
        }
        return ::fsync(m_descriptor) == 0;
    }

    [[nodiscard]] bool rename() {
        m_isInPlace = ::rename(m_path.c_str(), m_target.c_str()) == 0;
        return m_isInPlace;
    }

private:
    std::string m_target;
    std::string m_path;
    int m_descriptor = -1;
    bool m_isInPlace = false;
};

/// The new name must be on the disk, not only the new text.
bool syncFolder(const std::filesystem::path& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0)
        return false;
    const bool isSynced = ::fsync(descriptor) == 0 || errno == EINVAL; // some file systems cannot
    ::close(descriptor);
    return isSynced;
}

} // namespace

Status replaceFile(const std::string& path, const std::string& text) {
    std::error_code unresolved;
    std::filesystem::path target = std::filesystem::canonical(path, unresolved); // through a symbolic link
    if (unresolved)
        target = path;
    Replacement file(target.string());
    if (!file.isOpen())
        return saveFailure("this folder cannot be written to", path);
    if (!file.takeMode() || !file.write(text))
        return saveFailure("the new text could not be written", path);
    if (!file.rename())
        return saveFailure("the new file could not be put in place", path);
    if (!syncFolder(target.has_parent_path() ? target.parent_path() : std::filesystem::path(".")))
        return failure(
            "save-failed",
            std::string("the new file is in place, but may not survive a power cut: ") + std::strerror(errno), {path});
    return {};
}

} // namespace flowhand
