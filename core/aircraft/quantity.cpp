#include "aircraft/quantity.h"

#include "aircraft/atmosphere.h"
#include "base/signal.h"

namespace flowhand {

std::optional<double> QuantityReader::read(std::string_view key, std::string_view unit) {
    const std::optional<std::string> text = m_reader.text(key);
    if (!text)
        return std::nullopt;
    Signal like;
    like.name = std::string(key);
    like.unit = *findUnit(unit);
    const Result<Value> value = parseValue(like, *text);
    if (!value) {
        m_reader.problems().error(value.error().code, value.error().message, m_reader.placeOf(key));
        return std::nullopt;
    }
    return value->number() * like.unit.factor * (like.unit.dimension.angle != 0 ? kRadiansPerDegree : 1.0);
}

double QuantityReader::required(std::string_view key, std::optional<double> number, const std::string& example) {
    const std::string name = "'" + std::string(key) + "'";
    if (number && *number > 0.0)
        return *number;
    if (number)
        m_reader.problems().error("bad-value", name + " must be above 0", m_reader.placeOf(key));
    else if (m_reader.node(key) == nullptr)
        m_reader.problems().error("missing-key", name + " is missing; write " + example, m_reader.placeOf(key));
    return 1.0;
}

double QuantityReader::si(std::string_view key, std::string_view unit) {
    return required(key, read(key, unit), "a number and its unit, as in \"10 " + std::string(unit) + "\"");
}

double QuantityReader::siOr(std::string_view key, std::string_view unit, double otherwise) {
    return read(key, unit).value_or(otherwise);
}

double QuantityReader::bare(std::string_view key) {
    return required(key, m_reader.number(key), "a number");
}

double QuantityReader::bareOr(std::string_view key, double otherwise) {
    return m_reader.number(key).value_or(otherwise);
}

} // namespace flowhand
