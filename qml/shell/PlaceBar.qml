import QtQuick
import Flowhand

/// The places of the program, and which one is shown.
Row {
    id: bar

    required property int place
    signal chosen(int place)
    readonly property list<string> names: [qsTr("Fly"), qsTr("Bench"), qsTr("Review"), qsTr("Progress"), qsTr("Library")]

    spacing: Tokens.gap4

    Repeater {
        model: bar.names
        TabButton {
            required property int index
            required property string modelData

            text: modelData
            isHere: index === bar.place
            onClicked: bar.chosen(index)
        }
    }
}
