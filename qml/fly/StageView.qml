import QtQuick
import Flowhand

/// What the views of the Fly place's stages have in common: one primary action, by button or Return.
FocusScope {
    required property FlyPresenter fly

    focus: true

    /// False when there is nothing to be done now.
    function primaryAction(): bool {
        return false;
    }
}
