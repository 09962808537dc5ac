import QtQuick
import Flowhand

/// The cockpit and the motion as they were at the held time.
Card {
    id: strip

    required property RunReview run

    implicitHeight: 148 * Tokens.textScale
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("The controls at the held time")

    Column {
        id: readings
        x: Tokens.gap12
        y: Tokens.gap8
        width: 200 * Tokens.textScale
        spacing: 2
        Repeater {
            model: strip.run.motion
            Item {
                id: reading
                required property string label
                required property string value
                required property string unit
                width: readings.width
                height: number.implicitHeight + 1
                PlainText {
                    anchors.baseline: number.baseline
                    width: parent.width - number.implicitWidth - 4
                    text: reading.label
                    font.pixelSize: Tokens.quietSize
                    color: Tokens.quiet
                    elide: Text.ElideRight
                    wrapMode: Text.NoWrap
                }
                PlainText {
                    id: number
                    anchors.right: parent.right
                    text: qsTr("%1 %2").arg(reading.value).arg(reading.unit)
                    wrapMode: Text.NoWrap
                }
            }
        }
    }
    Loader {
        id: ground
        anchors { right: parent.right; top: parent.top; bottom: parent.bottom; margins: Tokens.gap8 }
        width: height * 1.4
        active: strip.run.ground.shown
        sourceComponent: GroundDrawing {
            ground: strip.run.ground
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("The aircraft on the ground from above, at the held time")
        }
    }
    Flickable {
        id: flick
        anchors { left: readings.right; right: ground.active ? ground.left : parent.right; top: parent.top; bottom: parent.bottom; leftMargin: Tokens.gap24; rightMargin: Tokens.gap12; topMargin: Tokens.gap8; bottomMargin: 4 }
        contentWidth: drawings.width
        clip: true
        ThinScrollBar.horizontal: ThinScrollBar {}
        Flow {
            id: drawings
            height: flick.height - 10
            flow: Flow.TopToBottom
            spacing: Tokens.gap8
            Repeater {
                model: strip.run.controls
                HeldControl {
                    height: control.flat ? Math.floor((drawings.height - 2 * Tokens.gap8) / 3) : drawings.height
                }
            }
        }
    }
}
