import QtQuick
import Flowhand

/// Several, of which one is picked: by mouse, or by the arrow keys.
FocusScope {
    id: pick

    required property string title
    required property RowModel rows
    /// The row that is picked, as its delegate says.
    property int at: 0
    signal picked(row: int)

    implicitHeight: head.height + Tokens.gap8 + list.contentHeight
    opacity: enabled ? 1 : 0.5
    Accessible.role: Accessible.List
    Accessible.name: title

    PlainText {
        id: head
        text: pick.title
        font.pixelSize: Tokens.quietSize
        color: Tokens.quiet
    }
    ListView {
        id: list
        anchors { top: head.bottom; topMargin: Tokens.gap8; left: parent.left; right: parent.right; bottom: parent.bottom }
        clip: true
        focus: true
        activeFocusOnTab: true
        model: pick.rows
        boundsBehavior: Flickable.StopAtBounds
        keyNavigationEnabled: false
        ThinScrollBar.vertical: ThinScrollBar {}
        Accessible.role: Accessible.List
        Accessible.name: pick.title
        Component.onCompleted: positionViewAtIndex(pick.at, ListView.Contain)
        Keys.onUpPressed: step(-1)
        Keys.onDownPressed: step(1)

        function step(by: int): void {
            pick.picked(pick.at + by);
            positionViewAtIndex(pick.at, ListView.Contain);
        }

        delegate: Item {
            id: row
            required property int rowId
            required property string title
            required property string detail
            required property bool chosen
            width: list.width - 12
            height: words.implicitHeight + Tokens.gap8
            Accessible.role: Accessible.RadioButton
            Accessible.name: detail === "" ? title : qsTr("%1, %2").arg(title).arg(detail)
            Accessible.checked: chosen
            onChosenChanged: if (chosen) pick.at = rowId
            Component.onCompleted: if (chosen) pick.at = rowId

            Rectangle {
                id: ring
                width: Tokens.bodySize
                height: width
                radius: width / 2
                x: 2
                anchors.verticalCenter: parent.verticalCenter
                color: "transparent"
                border.width: row.chosen ? 2 : 1
                border.color: row.chosen ? Tokens.accent : Tokens.line
                Rectangle {
                    anchors.centerIn: parent
                    visible: row.chosen
                    width: parent.width / 2
                    height: width
                    radius: width / 2
                    color: Tokens.accent
                }
            }
            PlainText {
                id: words
                anchors { left: ring.right; leftMargin: Tokens.gap8; right: more.left; rightMargin: Tokens.gap8; verticalCenter: parent.verticalCenter }
                text: row.title
                font.weight: row.chosen ? Font.DemiBold : Font.Normal
                Accessible.ignored: true
            }
            PlainText {
                id: more
                anchors { right: parent.right; rightMargin: Tokens.gap8; baseline: words.baseline }
                text: row.detail
                font.pixelSize: Tokens.quietSize
                color: Tokens.quiet
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            FocusFrame {
                anchors.margins: 0
                shown: list.activeFocus && row.chosen
            }
            MouseArea {
                anchors.fill: parent
                onClicked: {
                    list.forceActiveFocus();
                    pick.picked(row.rowId);
                }
            }
        }
    }
}
