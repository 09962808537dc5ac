#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/error.h"
#include "base/problem.h"
#include "base/time.h"

namespace flowhand {

struct TomlMember;

/// One value of a TOML file with its place. The tree is owned by its TomlFile.
struct TomlNode {
    enum class Kind : std::uint8_t { Text, Integer, Float, Boolean, Array, Table, Other };

    Kind kind = Kind::Table;
    SourcePlace place;
    std::string text;
    std::int64_t integer = 0;
    double real = 0.0; ///< also set for integers
    bool boolean = false;
    std::vector<TomlMember> members; ///< of tables, in the file's order
    std::vector<TomlNode> items;     ///< of arrays

    [[nodiscard]] const TomlNode* find(std::string_view key) const;
};

struct TomlMember {
    std::string first;
    TomlNode second;
};

/// A parsed TOML file. Immutable; may be read from any thread.
class TomlFile {
public:
    /// Errors: those of readFile(), `bad-toml` with the place.
    [[nodiscard]] static Result<TomlFile> load(const std::string& path);
    /// The same from memory; `name` stands in messages as the file.
    [[nodiscard]] static Result<TomlFile> parse(std::string source, std::string name);

    [[nodiscard]] const TomlNode& root() const { return m_root; }
    [[nodiscard]] const std::string& source() const { return m_source; }
    [[nodiscard]] const std::string& name() const { return m_root.place.file; }

    /// Where the character at `offset` (bytes) of a text value stands in the file, through quotes, escapes and line
    /// breaks.
    [[nodiscard]] SourcePlace placeInText(const TomlNode& text, std::size_t offset) const;

private:
    std::string m_source;
    TomlNode m_root;
};

/// Reads the keys of one table, each at most once, and complains of what it was not asked for.
/// A key of the wrong type is an error in `problems` and reads as missing.
class TomlReader {
public:
    /// `what` names the table in messages: "step 'flap_12'". All references must outlive the reader.
    TomlReader(const TomlFile& file, const TomlNode& table, std::string what, Problems& problems);

    [[nodiscard]] std::optional<std::string> text(std::string_view key);
    [[nodiscard]] std::optional<bool> boolean(std::string_view key);
    [[nodiscard]] std::optional<double> number(std::string_view key);
    [[nodiscard]] std::optional<std::int64_t> integer(std::string_view key);
    [[nodiscard]] std::optional<Duration> duration(std::string_view key);
    /// A list of texts; one text alone is a list of one.
    [[nodiscard]] std::vector<std::string> texts(std::string_view key);
    [[nodiscard]] std::vector<double> numbers(std::string_view key);
    [[nodiscard]] const TomlNode* table(std::string_view key);
    [[nodiscard]] std::vector<const TomlNode*> tables(std::string_view key);
    /// Whatever it is; for keys of several types.
    [[nodiscard]] const TomlNode* node(std::string_view key);

    /// Like text(), and an error `missing-key` when it is not there; then empty.
    [[nodiscard]] std::string requiredText(std::string_view key);

    /// Where `key` stands, or the table when it is missing.
    [[nodiscard]] SourcePlace placeOf(std::string_view key) const;

    /// Error `unknown-key`, with the nearest known one, for each key that nobody asked for.
    void finish();

    [[nodiscard]] const TomlFile& file() const { return m_file; }
    [[nodiscard]] const TomlNode& tableNode() const { return m_table; }
    [[nodiscard]] Problems& problems() { return m_problems; }

private:
    const TomlNode* ask(std::string_view key, TomlNode::Kind kind, std::string_view expected);

    const TomlFile& m_file;
    const TomlNode& m_table;
    std::string m_what;
    Problems& m_problems;
    std::set<std::string, std::less<>> m_asked;
};

} // namespace flowhand
