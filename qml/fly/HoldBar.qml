import QtQuick
import QtQuick.Layouts
import Flowhand

/// Why the run stands still, and what else the pilot should know; above the due step, never over it.
Card {
    id: bar

    required property FlyPresenter fly
    readonly property bool isHeld: fly.stage === FlyPresenter.Held

    implicitHeight: row.implicitHeight + 2 * Tokens.gap12
    border.width: 1
    border.color: Tokens.info

    RowLayout {
        id: row
        anchors.left: parent.left
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        anchors.margins: Tokens.gap16
        spacing: Tokens.gap16
        ColumnLayout {
            Layout.fillWidth: true
            spacing: Tokens.gap4
            PlainText {
                visible: bar.isHeld
                Layout.fillWidth: true
                text: bar.fly.run.holdReason !== "" ? qsTr("Held: %1").arg(bar.fly.run.holdReason) : qsTr("Held. Time does not count.")
                font.pixelSize: Tokens.strongSize
                font.weight: Font.DemiBold
            }
            NoticeList {
                // A low window has room for the reason alone.
                visible: notices.count > 0 && !(bar.isHeld && Tokens.isLow(bar.Window.height))
                Layout.fillWidth: true
                notices: bar.fly.run.freshNotices
            }
            Repeater {
                model: bar.fly.run.setUp
                NoticeLine {
                    required property ControlState control
                    required property string wantedText
                    Layout.fillWidth: true
                    text: qsTr("To go on, put %1 to %2; it is at %3.").arg(control.label).arg(wantedText).arg(control.valueText)
                }
            }
            Repeater {
                model: bar.fly.run.toMatch
                NoticeLine {
                    required property ControlState control
                    required property string wantedText
                    Layout.fillWidth: true
                    text: qsTr("The partner moved it: put %1 to %2 as well.").arg(control.label).arg(wantedText)
                }
            }
        }
        ActionButton {
            visible: bar.isHeld && bar.fly.run.setUp.count > 0
            text: qsTr("Go on as it is")
            hint: qsTr("The debrief will say that the set-up was not right.")
            onClicked: bar.fly.waive()
        }
        ActionButton {
            visible: bar.isHeld
            text: qsTr("Go on")
            primary: !bar.fly.jump.open
            keyName: primary ? qsTr("Return") : "F2"
            onClicked: bar.fly.resume()
        }
    }
}
