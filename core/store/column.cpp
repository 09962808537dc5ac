#include "store/column.h"

#include <bit>
#include <cmath>

namespace flowhand {

namespace {

constexpr double kPowers[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

/// Beyond this a double no longer holds every whole number.
constexpr double kLargestWhole = 9007199254740992.0;

bool isMultiple(double number, int coding) {
    const double scaled = number * kPowers[coding];
    if (!(std::fabs(scaled) < kLargestWhole))
        return false;
    const double back = static_cast<double>(std::llround(scaled)) / kPowers[coding];
    return std::bit_cast<std::uint64_t>(back) == std::bit_cast<std::uint64_t>(number);
}

std::int64_t difference(std::uint64_t a, std::uint64_t b) {
    return static_cast<std::int64_t>(a - b);
}

} // namespace

int codingFor(const std::vector<Value>& values) {
    int coding = 0;
    for (const Value value : values)
        while (value.isKnown() && coding < kBitsCoding && !isMultiple(value.number(), coding))
            ++coding;
    return coding;
}

void putColumn(Bytes& bytes, const std::vector<Value>& values, int coding) {
    std::uint64_t before = 0;
    for (const Value value : values) {
        if (coding == kBitsCoding) {
            const std::uint64_t bits = std::bit_cast<std::uint64_t>(value.number());
            putVarint(bytes, zigzag(difference(bits, before)));
            before = bits;
        } else if (!value.isKnown()) {
            putVarint(bytes, 0);
        } else {
            const auto multiple = static_cast<std::uint64_t>(std::llround(value.number() * kPowers[coding]));
            putVarint(bytes, zigzag(difference(multiple, before)) + 1);
            before = multiple;
        }
    }
}

std::vector<Value> readColumn(ByteReader& reader, std::size_t count, int coding) {
    std::vector<Value> values;
    values.reserve(count);
    std::uint64_t before = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const std::uint64_t code = reader.varint();
        if (coding == kBitsCoding) {
            before += static_cast<std::uint64_t>(unzigzag(code));
            values.push_back(Value::number(std::bit_cast<double>(before)));
        } else if (code == 0) {
            values.push_back(Value::unknown());
        } else {
            before += static_cast<std::uint64_t>(unzigzag(code - 1));
            values.push_back(Value::number(static_cast<double>(static_cast<std::int64_t>(before)) / kPowers[coding]));
        }
    }
    return values;
}

} // namespace flowhand
