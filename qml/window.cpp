#include "window.h"

#include <QtQml>

void qml_register_types_Flowhand();

namespace flowhand {

void registerQmlTypes() {
    // Naming the function is enough: a static library's registration is linked in only when something refers to it.
    volatile auto registration = &qml_register_types_Flowhand;
    Q_UNUSED(registration)
}

} // namespace flowhand
