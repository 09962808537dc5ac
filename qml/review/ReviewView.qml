import QtQuick
import Flowhand

/// What the views of the Review place have in common.
FocusScope {
    focus: true
    required property ReviewPresenter review

    /// False when the key means nothing here. Overridden.
    function pressKey(key: int, modifiers: int): bool {
        return false;
    }
}
