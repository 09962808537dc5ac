import QtQuick
import QtQuick.Templates as T
import Flowhand

/// The places of the program, and which one is shown.
Row {
    id: bar

    required property int place
    signal chosen(int place)
    readonly property list<string> names: [qsTr("Fly"), qsTr("Bench")]

    spacing: Tokens.gap4

    Repeater {
        model: bar.names
        T.Button {
            id: button
            required property int index
            required property string modelData
            readonly property bool isHere: index === bar.place

            implicitWidth: implicitContentWidth + leftPadding + rightPadding
            implicitHeight: implicitContentHeight + 8
            leftPadding: Tokens.gap12
            rightPadding: Tokens.gap12
            focusPolicy: Qt.TabFocus
            Accessible.role: Accessible.PageTab
            Accessible.name: modelData
            Accessible.selected: isHere
            onClicked: bar.chosen(index)
            Keys.onReturnPressed: clicked()
            Keys.onEnterPressed: clicked()

            background: Item {
                Rectangle {
                    anchors { left: parent.left; right: parent.right; bottom: parent.bottom }
                    height: 2
                    color: button.isHere ? Tokens.accent : button.hovered ? Tokens.line : "transparent"
                }
                FocusFrame {
                    anchors.margins: 0
                    shown: button.visualFocus
                }
            }
            contentItem: PlainText {
                text: button.modelData
                font.weight: button.isHere ? Font.DemiBold : Font.Normal
                color: button.isHere ? Tokens.text : Tokens.quiet
                verticalAlignment: Text.AlignVCenter
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
        }
    }
}
