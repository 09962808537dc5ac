import QtQuick
import Flowhand

/// The on-screen cockpit: every control of the aircraft, tall ones side by side, small ones stacked.
Card {
    id: cockpit

    required property ScreenPanel panel

    implicitHeight: 178 * Tokens.textScale
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("On-screen controls")

    Flickable {
        id: flick
        anchors.fill: parent
        anchors.margins: Tokens.gap12
        contentWidth: controls.width
        clip: true
        ThinScrollBar.horizontal: ThinScrollBar {}
        Flow {
            id: controls
            height: flick.height
            flow: Flow.TopToBottom
            spacing: Tokens.gap12
            Repeater {
                model: cockpit.panel.controls
                ScreenControl {
                    panel: cockpit.panel
                }
            }
        }
    }
}
