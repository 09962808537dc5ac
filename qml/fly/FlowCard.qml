import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Flowhand

/// A flow to choose. The chosen one has the buttons.
T.AbstractButton {
    id: card

    required property int rowId
    required property string title
    required property string summary
    required property string stretch
    required property string aircraft
    required property int steps
    required property string target
    required property bool demonstrated
    required property bool chosen
    /// Room for the buttons, kept free where they are not shown.
    required property real buttonHeight
    /// To watch is the main thing to do.
    property bool demonstrationFirst: false
    readonly property bool watchedFirst: demonstrationFirst && demonstrated
    signal flyAsked
    signal demonstrationAsked

    implicitHeight: implicitContentHeight + 2 * padding
    padding: Tokens.gap24
    focusPolicy: Qt.TabFocus
    Accessible.role: Accessible.Button
    Accessible.name: card.title
    Accessible.description: card.summary
    Keys.onSpacePressed: card.clicked()

    background: Card {
        border.width: card.chosen ? 2 : 0
        border.color: Tokens.accent
        FocusFrame { shown: card.visualFocus }
    }
    contentItem: ColumnLayout {
        spacing: Tokens.gap8
        PlainText {
            Layout.fillWidth: true
            text: card.stretch
            color: Tokens.quiet
            font.pixelSize: Tokens.quietSize
        }
        PlainText {
            Layout.fillWidth: true
            text: card.title
            font.pixelSize: Tokens.titleSize
            font.weight: Font.DemiBold
        }
        PlainText {
            Layout.fillWidth: true
            Layout.fillHeight: true
            text: card.summary
            verticalAlignment: Text.AlignTop
        }
        PlainText {
            Layout.fillWidth: true
            text: qsTr("%1 · %2 steps · %3 of 100 points to pass").arg(card.aircraft).arg(card.steps).arg(card.target)
            color: Tokens.quiet
            font.pixelSize: Tokens.quietSize
        }
        // Most of many cards never show them.
        Loader {
            Layout.topMargin: Tokens.gap8
            Layout.preferredHeight: card.buttonHeight
            active: card.chosen
            sourceComponent: RowLayout {
                spacing: Tokens.gap12
                ActionButton {
                    text: qsTr("Fly it")
                    primary: !card.watchedFirst
                    keyName: primary ? qsTr("Return") : ""
                    onClicked: card.flyAsked()
                }
                ActionButton {
                    visible: card.demonstrated
                    text: qsTr("Watch it flown")
                    primary: card.watchedFirst
                    keyName: primary ? qsTr("Return") : ""
                    onClicked: card.demonstrationAsked()
                }
            }
        }
    }
}
