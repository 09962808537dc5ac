import QtQuick
import QtQuick.Layouts
import Flowhand

/// How the aircraft moves, and what can be done with the run.
Card {
    id: strip

    required property FlyPresenter fly
    required property bool panelShown
    signal panelAsked

    readonly property bool isLow: Tokens.isLow(Window.height)
    /// Readings and buttons one above the other, where they do not fit side by side.
    readonly property bool isStacked: readings.implicitWidth + buttons.implicitWidth + 2 * Tokens.gap24 > width

    implicitHeight: grid.implicitHeight + 2 * Tokens.gap8

    GridLayout {
        id: grid
        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; leftMargin: Tokens.gap24; rightMargin: Tokens.gap16 }
        columns: strip.isStacked ? 1 : 2
        rowSpacing: Tokens.gap4
        RowLayout {
            id: readings
            spacing: strip.isLow ? Tokens.gap12 : Tokens.gap24
            Reading {
                label: qsTr("Time")
                value: strip.fly.run.clock
                unit: ""
            }
            Reading {
                visible: strip.fly.slowness > 1
                label: qsTr("Slow time")
                value: strip.fly.slowness
                unit: qsTr("times slower")
                ink: Tokens.info
            }
            Repeater {
                model: strip.fly.run.motion
                Reading {}
            }
            LineOffset {
                visible: strip.fly.run.hasLine && !strip.fly.ground.shown && !strip.isLow
                offset: strip.fly.run.offLine
                words: strip.fly.run.lineText
            }
        }
        RowLayout {
            id: buttons
            Layout.alignment: Qt.AlignRight
            spacing: Tokens.gap8
            ActionButton {
                text: qsTr("Controls")
                hint: strip.panelShown ? qsTr("Hide the on-screen controls") : qsTr("Show the on-screen controls")
                keyName: "F4"
                onClicked: strip.panelAsked()
            }
            ActionButton {
                enabled: strip.fly.stage === FlyPresenter.Running
                text: qsTr("Hold")
                keyName: "F2"
                onClicked: strip.fly.hold()
            }
            ActionButton {
                text: qsTr("Repeat")
                hint: qsTr("The due step again from its start")
                keyName: "F3"
                onClicked: strip.fly.repeat()
            }
            ActionButton {
                text: qsTr("Jump")
                hint: qsTr("Holds the run, and goes on with another step")
                keyName: "F7"
                onClicked: strip.fly.jump.open ? strip.fly.closeJump() : strip.fly.openJump()
            }
            ActionButton {
                text: qsTr("Stop")
                keyName: "F8"
                onClicked: strip.fly.stop()
            }
        }
        PlainText {
            visible: strip.fly.run.feedText !== ""
            Layout.fillWidth: true
            Layout.columnSpan: grid.columns
            text: strip.fly.run.feedText
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
    }
}
