import QtQuick
import QtQuick.Layouts
import Flowhand

/// A control, where it is, and where it has to go: in words.
RowLayout {
    id: line

    required property ControlState control
    required property bool wanted
    required property string wantedText
    property int size: Tokens.strongSize
    /// Whether the control has to be named.
    property bool labelled: true

    spacing: Tokens.gap12

    PlainText {
        visible: line.labelled
        Layout.preferredWidth: Math.min(9 * line.size, line.width * 0.42)
        text: line.control.label
        font.pixelSize: line.size
        color: Tokens.quiet
        elide: Text.ElideRight
        wrapMode: Text.NoWrap
    }
    PlainText {
        // Room for the widest value, so that what follows does not jump.
        Layout.minimumWidth: line.wanted && line.labelled ? 3.5 * line.size : 0
        text: line.control.valueText
        font.pixelSize: line.size
        wrapMode: Text.NoWrap
        horizontalAlignment: line.labelled ? Text.AlignRight : Text.AlignLeft
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
