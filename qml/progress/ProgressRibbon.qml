import QtQuick
import Flowhand

/// The way from gate to gate; each flow's bead is filled as far as it is known.
Item {
    id: ribbon

    required property ProgressPresenter progress
    readonly property real inset: 10

    implicitHeight: Tokens.isLow(Window.height) ? 44 : 60
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The flight from gate to gate; each bead is filled as far as its flow is known")

    RibbonLine {
        id: line
        anchors.fill: parent
        color: Tokens.line
        thickness: 2
    }
    Repeater {
        model: ribbon.progress.flows
        Item {
            id: bead
            required property int rowId
            required property real from
            required property real to
            required property real strength
            readonly property bool isChosen: rowId === ribbon.progress.chosen
            readonly property real across: (from + to) / 2
            visible: from >= 0
            width: isChosen ? 22 : 18
            height: width
            x: across * ribbon.width - width / 2
            y: line.yAt(across, ribbon.height, ribbon.inset) - height / 2
            Rectangle {
                anchors.fill: parent
                radius: width / 2
                color: Tokens.ground
                border.width: 2
                border.color: bead.isChosen ? Tokens.accent : Tokens.text
            }
            Item {
                x: 4
                width: parent.width - 8
                height: Math.round((parent.height - 8) * bead.strength)
                y: parent.height - 4 - height
                clip: true
                Rectangle {
                    anchors.bottom: parent.bottom
                    width: parent.width
                    height: width
                    radius: width / 2
                    color: bead.isChosen ? Tokens.accent : Tokens.text
                }
            }
            TapHandler {
                margin: 6
                onTapped: ribbon.progress.choose(bead.rowId)
            }
        }
    }
}
