import QtQuick
import QtQuick.Layouts
import Flowhand

/// Where a flight begins, with which step, and how fast it goes.
Card {
    id: card

    required property StartPresenter start
    required property string flight

    Keys.onEscapePressed: card.start.editing = false

    ColumnLayout {
        anchors.fill: parent
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap12
        PlainText {
            Layout.fillWidth: true
            text: qsTr("Begin “%1” elsewhere, or slower").arg(card.flight)
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
        PlainText {
            Layout.fillWidth: true
            text: card.start.fed ? qsTr("A feed moves the aircraft: where it is and how fast, the feed says.")
                : qsTr("A run that begins with a later step is for practice: its controls stand as the steps before leave them, and it does not pass.")
            color: Tokens.quiet
        }
        RowLayout {
            Layout.fillWidth: true
            Layout.fillHeight: true
            spacing: Tokens.gap24
            PickList {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 3
                enabled: !card.start.fed
                focus: true
                title: qsTr("The aircraft begins at")
                rows: card.start.places
                onPicked: row => card.start.pickPlace(row)
                Component.onCompleted: forceActiveFocus()
            }
            PickList {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 4
                title: qsTr("With")
                rows: card.start.steps
                onPicked: row => card.start.pickStep(row)
            }
            PickList {
                Layout.fillWidth: true
                Layout.fillHeight: true
                Layout.preferredWidth: 2
                enabled: !card.start.fed
                title: qsTr("The run goes")
                rows: card.start.paces
                onPicked: row => card.start.pickPace(row)
            }
        }
        ActionButton {
            text: qsTr("Done")
            primary: true
            keyName: qsTr("Return")
            onClicked: card.start.editing = false
        }
    }
}
