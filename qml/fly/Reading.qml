import QtQuick
import Flowhand

/// A number with what it is and its unit.
Column {
    id: reading

    required property string label
    required property string value
    required property string unit
    property color ink: Tokens.text

    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1 %2 %3").arg(label).arg(value).arg(unit)

    PlainText {
        text: reading.label
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    Row {
        spacing: Tokens.gap4
        PlainText {
            id: number
            text: reading.value
            font.pixelSize: Tokens.titleSize
            font.weight: Font.DemiBold
            color: reading.ink
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
        PlainText {
            anchors.baseline: number.baseline
            text: reading.unit
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.NoWrap
            Accessible.ignored: true
        }
    }
}
