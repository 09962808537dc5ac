import QtQuick
import QtQuick.Layouts
import Flowhand

/// One of few answers: a title, what it means, and the button for it.
Card {
    id: card

    required property string title
    required property string words
    required property string actionText
    property bool primary: false
    signal accepted

    implicitHeight: column.implicitHeight + 2 * Tokens.gap24

    ColumnLayout {
        id: column
        anchors.fill: parent
        anchors.margins: Tokens.gap24
        spacing: Tokens.gap12
        PlainText {
            Layout.fillWidth: true
            text: card.title
            font.pixelSize: Tokens.strongSize
            font.weight: Font.DemiBold
        }
        PlainText {
            Layout.fillWidth: true
            Layout.fillHeight: true
            text: card.words
        }
        ActionButton {
            text: card.actionText
            primary: card.primary
            keyName: card.primary ? qsTr("Return") : ""
            onClicked: card.accepted()
        }
    }
}
