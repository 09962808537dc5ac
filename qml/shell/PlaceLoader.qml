import QtQuick
import QtQuick.Layouts

/// A place that is made when it is gone to, and fills what there is.
Loader {
    visible: active
    focus: active
    Layout.fillWidth: true
    Layout.fillHeight: true
}
