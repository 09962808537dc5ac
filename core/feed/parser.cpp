#include "feed/parser.h"

#include "feed/gdl90.h"
#include "feed/jsonlines.h"
#include "feed/nmea.h"

namespace flowhand {

std::string_view nameOf(FeedFormat format) {
    switch (format) {
    case FeedFormat::JsonLines:
        return "JSON lines";
    case FeedFormat::Nmea:
        return "NMEA 0183";
    case FeedFormat::Gdl90:
        break;
    }
    return "GDL 90";
}

std::unique_ptr<FeedParser> makeParser(FeedFormat format, FeedSignals signals) {
    switch (format) {
    case FeedFormat::JsonLines:
        return std::make_unique<JsonLinesParser>(signals);
    case FeedFormat::Nmea:
        return std::make_unique<NmeaParser>(signals);
    case FeedFormat::Gdl90:
        break;
    }
    return std::make_unique<Gdl90Parser>(signals);
}

} // namespace flowhand
