import QtQuick
import Flowhand

/// To the one before, to the next one.
Row {
    id: pair

    required property string name
    required property string keyName
    signal backAsked
    signal onAsked

    QuietButton {
        text: "‹"
        Accessible.name: qsTr("%1 before").arg(pair.name)
        onClicked: pair.backAsked()
    }
    QuietButton {
        text: qsTr("%1 ›").arg(pair.name)
        keyName: pair.keyName
        Accessible.name: qsTr("Next: %1").arg(pair.name)
        onClicked: pair.onAsked()
    }
}
