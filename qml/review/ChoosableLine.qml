import QtQuick
import Flowhand

/// A line of a list that can be chosen by mouse, Tab and Space; whoever uses it lays words upon it.
Item {
    id: line

    required property string spoken
    property bool chosen: false
    property bool choosable: true
    readonly property color ground: chosen ? Tokens.sunken : Tokens.raised
    signal picked

    activeFocusOnTab: choosable
    Accessible.role: Accessible.ListItem
    Accessible.name: spoken
    Accessible.selected: chosen
    Accessible.onPressAction: picked()
    Keys.onSpacePressed: picked()

    Rectangle {
        anchors.fill: parent
        anchors.margins: 1
        radius: Tokens.corner
        color: line.chosen ? Tokens.sunken : hover.hovered && line.choosable ? Tokens.ground : "transparent"
        border.width: line.activeFocus ? 2 : 0
        border.color: Tokens.accent
    }
    HoverHandler {
        id: hover
    }
    TapHandler {
        enabled: line.choosable
        onTapped: line.picked()
    }
}
