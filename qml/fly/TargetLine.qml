import QtQuick
import QtQuick.Layouts
import Flowhand

/// A control, where it is, and where it has to go: in words.
RowLayout {
    id: line

    required property ControlState control
    required property bool wanted
    required property string wantedText
    required property bool there
    property int size: Tokens.strongSize

    spacing: Tokens.gap12

    PlainText {
        Layout.preferredWidth: 11 * line.size
        text: line.control.label
        font.pixelSize: line.size
        color: Tokens.quiet
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    PlainText {
        Layout.preferredWidth: 6 * line.size
        text: line.control.valueText
        font.pixelSize: line.size
        wrapMode: Text.NoWrap
        horizontalAlignment: Text.AlignRight
    }
    PlainText {
        visible: line.wanted
        text: "→"
        font.pixelSize: line.size
        color: Tokens.quiet
        Accessible.ignored: true
    }
    PlainText {
        visible: line.wanted
        Layout.fillWidth: true
        text: line.wantedText
        font.pixelSize: line.size
        font.weight: Font.DemiBold
        color: Tokens.accent
        wrapMode: Text.NoWrap
        elide: Text.ElideRight
    }
    Item {
        visible: !line.wanted
        Layout.fillWidth: true
    }
}
