import QtQuick
import Flowhand

/// What the views of the Library place have in common.
FocusScope {
    required property LibraryPresenter library

    focus: true

    /// False when the key means nothing here. Overridden.
    function pressKey(key: int, modifiers: int): bool {
        return false;
    }
}
