import QtQuick
import Flowhand

/// A control that is not where the flow starts from: drawn, and in words.
Rectangle {
    id: item

    required property ControlState control
    required property bool wanted
    required property real low
    required property real high
    required property list<int> places
    required property string wantedText

    width: 176 * Tokens.textScale
    height: 216 * Tokens.textScale
    radius: Tokens.corner
    color: Tokens.sunken
    Accessible.role: Accessible.ListItem
    Accessible.name: qsTr("%1: %2, to %3").arg(control.label).arg(control.valueText).arg(wantedText)

    PlainText {
        id: label
        anchors { top: parent.top; left: parent.left; right: parent.right; margins: Tokens.gap12 }
        text: item.control.label
        font.weight: Font.DemiBold
        wrapMode: Text.NoWrap
        elide: Text.ElideRight
        Accessible.ignored: true
    }
    ControlDrawing {
        anchors.centerIn: parent
        width: Math.min(implicitWidth * Tokens.textScale, parent.width - 2 * Tokens.gap12)
        height: Math.min(implicitHeight * Tokens.textScale, parent.height - label.height - words.height - 4 * Tokens.gap12)
        control: item.control
        wanted: item.wanted
        wantedLow: item.low
        wantedHigh: item.high
        wantedPlaces: item.places
    }
    PlainText {
        id: words
        anchors { bottom: parent.bottom; left: parent.left; right: parent.right; margins: Tokens.gap12 }
        text: qsTr("%1 → %2").arg(item.control.valueText).arg(item.wantedText)
        maximumLineCount: 2
        elide: Text.ElideRight
        Accessible.ignored: true
    }
}
