#include "feedbytes.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    return feedBytes(flowhand::FeedFormat::Nmea, data, size);
}
