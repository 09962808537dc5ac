import QtQuick
import Flowhand

/// The way from gate to gate, with a bead for each flow: drawn from the flow files. `chosen` is the row of the flow
/// that is flown or looked at; a bead that is clicked asks for its flow.
Item {
    id: ribbon

    required property RowModel phases
    required property RowModel flows
    property int chosen: -1
    property bool choosable: false
    signal beadChosen(row: int)

    readonly property real lineHeight: 44
    readonly property real inset: 8

    /// A low window has no room for the names of the phases.
    readonly property bool isNamed: !Tokens.isLow(Window.height)

    implicitHeight: lineHeight + (isNamed ? Tokens.quietSize + 9 : 0)
    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("The flight from gate to gate, with its flows")

    RibbonLine {
        id: line
        width: parent.width
        height: ribbon.lineHeight
        color: Tokens.line
        thickness: 2
    }
    Repeater {
        model: ribbon.phases
        PlainText {
            required property string title
            required property real from
            required property real to
            visible: ribbon.isNamed
            x: (from + to) / 2 * ribbon.width - width / 2
            y: ribbon.lineHeight + 2
            text: title
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.NoWrap
        }
    }
    Repeater {
        model: ribbon.flows
        Item {
            id: bead
            required property int rowId
            required property string title
            required property real from
            required property real to
            readonly property bool isChosen: rowId === ribbon.chosen
            width: ribbon.width
            height: ribbon.lineHeight
            RibbonLine {
                anchors.fill: parent
                visible: bead.isChosen
                from: bead.from
                to: bead.to
                color: Tokens.accent
                thickness: 3
            }
            Rectangle {
                readonly property real across: (bead.from + bead.to) / 2
                width: bead.isChosen ? 16 : 12
                height: width
                radius: width / 2
                x: across * bead.width - width / 2
                y: line.yAt(across, bead.height, ribbon.inset) - height / 2
                color: bead.isChosen ? Tokens.accent : Tokens.ground
                border.width: 2
                border.color: bead.isChosen ? Tokens.accent : Tokens.text
                MouseArea {
                    anchors.fill: parent
                    anchors.margins: -8
                    enabled: ribbon.choosable
                    cursorShape: enabled ? Qt.PointingHandCursor : Qt.ArrowCursor
                    onClicked: ribbon.beadChosen(bead.rowId)
                }
            }
        }
    }
}
