#pragma once

class QQmlEngine;

namespace flowhand {

/// Makes the QML types of this library known to the program; call once before the first engine.
void registerQmlTypes();

} // namespace flowhand
