#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace flowhand {

/// Cuts bytes into lines that end in LF or CR LF. Keeps at most `longest` bytes; longer lines are skipped to their end
/// and counted.
class LineCutter {
public:
    explicit LineCutter(std::size_t longest) : m_longest(longest) {}

    /// `use` gets each line that is not empty, without its end.
    template <class Use>
    void take(std::span<const std::uint8_t> bytes, std::uint64_t& oversized, Use use) {
        for (const std::uint8_t byte : bytes) {
            if (byte == '\n')
                end(use);
            else if (m_isSkipping)
                continue;
            else if (m_line.size() < m_longest)
                m_line.push_back(static_cast<char>(byte));
            else
                skip(oversized);
        }
    }
    /// The end of the bytes ends the line, too.
    template <class Use>
    void finish(Use use) {
        end(use);
    }

private:
    template <class Use>
    void end(Use use) {
        std::string_view line = m_line;
        if (!line.empty() && line.back() == '\r')
            line.remove_suffix(1);
        if (!line.empty() && !m_isSkipping)
            use(line);
        m_line.clear();
        m_isSkipping = false;
    }
    void skip(std::uint64_t& oversized) {
        ++oversized;
        m_isSkipping = true;
        m_line.clear();
    }

    const std::size_t m_longest;
    std::string m_line;
    bool m_isSkipping = false;
};

} // namespace flowhand
