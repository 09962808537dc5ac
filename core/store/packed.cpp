#include "store/packed.h"

#include <zlib.h>

namespace flowhand {

namespace {

constexpr std::size_t kLargest = std::size_t{16} << 20;

/// Feeds one section and appends what comes out.
void deflateSection(z_stream& stream, const Bytes& section, int flush, Bytes& out) {
    // zlib does not write through next_in; its type is older than const.
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(section.data()));
    stream.avail_in = static_cast<uInt>(section.size());
    char buffer[4096];
    do {
        stream.next_out = reinterpret_cast<Bytef*>(buffer);
        stream.avail_out = sizeof buffer;
        deflate(&stream, flush);
        out.append(buffer, sizeof buffer - stream.avail_out);
    } while (stream.avail_out == 0);
}

} // namespace

Bytes pack(const std::vector<Bytes>& sections) {
    std::size_t size = 0;
    for (const Bytes& section : sections)
        size += section.size();
    Bytes packed;
    putVarint(packed, size);
    z_stream stream{};
    deflateInit(&stream, Z_DEFAULT_COMPRESSION);
    for (std::size_t i = 0; i < sections.size(); ++i)
        deflateSection(stream, sections[i], i + 1 == sections.size() ? Z_FINISH : Z_BLOCK, packed);
    deflateEnd(&stream);
    return packed;
}

std::optional<Bytes> unpack(std::string_view packed) {
    ByteReader reader(packed);
    const std::uint64_t size = reader.varint();
    if (!reader.isGood() || size > kLargest)
        return std::nullopt;
    const std::string_view stream = reader.rest();
    // Deflate cannot make more than about 1032 bytes of one; more is a lie, not worth the memory.
    if (size > stream.size() * 1100)
        return std::nullopt;
    Bytes bytes(size, '\0');
    uLongf length = size;
    uLong used = stream.size();
    const int result = uncompress2(reinterpret_cast<Bytef*>(bytes.data()), &length,
                                   reinterpret_cast<const Bytef*>(stream.data()), &used);
    if (result != Z_OK || length != size || used != stream.size())
        return std::nullopt;
    return bytes;
}

void putVarint(Bytes& bytes, std::uint64_t number) {
    for (; number >= 0x80; number >>= 7)
        bytes.push_back(static_cast<char>(0x80 | (number & 0x7F)));
    bytes.push_back(static_cast<char>(number));
}

std::uint64_t ByteReader::longVarint() {
    std::uint64_t number = 0;
    for (int shift = 0; shift < 70 && m_isGood; shift += 7) {
        const std::uint8_t part = byte();
        if (shift == 63 && part > 1)
            break;
        number |= std::uint64_t(part & 0x7F) << shift;
        if (part < 0x80)
            return m_isGood ? number : 0;
    }
    m_isGood = false;
    return 0;
}

std::size_t ByteReader::count(std::size_t bytesEach) {
    const std::uint64_t number = varint();
    if (number > (m_bytes.size() - m_at) / bytesEach)
        m_isGood = false;
    return m_isGood ? static_cast<std::size_t>(number) : 0;
}

} // namespace flowhand
