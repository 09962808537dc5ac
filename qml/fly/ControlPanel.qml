import QtQuick
import Flowhand

/// The on-screen cockpit: every control that the flow has to do with, tall ones side by side, flat ones stacked.
Card {
    id: cockpit

    required property ScreenPanel panel
    readonly property bool isScrolled: controls.width > flick.width

    implicitHeight: Math.max(190, Math.min(290, Window.height * 0.235)) * Tokens.textScale + (isScrolled ? 10 : 0)
    Accessible.role: Accessible.Grouping
    Accessible.name: qsTr("On-screen controls")

    Flickable {
        id: flick
        anchors.fill: parent
        anchors.margins: Tokens.gap12
        anchors.bottomMargin: cockpit.isScrolled ? 4 : Tokens.gap12
        contentWidth: controls.width
        clip: true
        ThinScrollBar.horizontal: ThinScrollBar {}
        Flow {
            id: controls
            height: flick.height - (cockpit.isScrolled ? 14 : 0)
            flow: Flow.TopToBottom
            spacing: cockpit.width > 1700 ? 20 : cockpit.width > 1400 ? 12 : 4
            Repeater {
                model: cockpit.panel.controls
                ScreenControl {
                    panel: cockpit.panel
                    height: control.flat ? Math.floor((controls.height - 3 * controls.spacing) / 4) : controls.height
                }
            }
        }
    }
}
