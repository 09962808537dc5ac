#include "base/error.h"

namespace flowhand {

std::string describe(const Error& error) {
    std::string text = error.place.file;
    if (error.place.line > 0) {
        text += (text.empty() ? "line " : ":") + std::to_string(error.place.line);
        if (error.place.column > 0)
            text += ':' + std::to_string(error.place.column);
    }
    return text.empty() ? error.message : text + ": " + error.message;
}

} // namespace flowhand
