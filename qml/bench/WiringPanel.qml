import QtQuick
import QtQuick.Layouts
import Flowhand

/// Ways of wiring that what moves alone does not tell; in place of the plot.
ColumnLayout {
    id: panel

    required property BenchPresenter bench
    readonly property WiringChoice choice: bench.wiring
    signal begun
    signal closed

    /// False when the key means nothing here.
    function pressKey(key: int): bool {
        switch (key) {
        case Qt.Key_Up:
            choice.chosen = choice.chosen - 1;
            return true;
        case Qt.Key_Down:
            choice.chosen = choice.chosen + 1;
            return true;
        case Qt.Key_Left:
            choice.turnOther(-1);
            return true;
        case Qt.Key_Right:
            choice.turnOther(1);
            return true;
        default:
            return false;
        }
    }

    spacing: Tokens.gap8

    PlainText {
        Layout.fillWidth: true
        text: qsTr("Return by itself finds whatever moves. Which of these is it instead?")
        color: Tokens.quiet
    }
    ListView {
        id: list
        Layout.fillWidth: true
        Layout.fillHeight: true
        Layout.minimumHeight: 60
        clip: true
        model: panel.choice.offers
        currentIndex: panel.choice.chosen
        highlightMoveDuration: 0
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: OfferLine {
            required property int index
            width: list.width - 12
            chosen: index === panel.choice.chosen
            onPicked: panel.choice.chosen = index
        }
    }
    RowLayout {
        visible: panel.choice.other !== ""
        Layout.fillWidth: true
        spacing: Tokens.gap8
        PlainText {
            text: qsTr("The other control:")
            wrapMode: Text.NoWrap
        }
        ActionButton {
            text: panel.choice.other
            keyName: "← →"
            hint: qsTr("The next control that can be the second one")
            onClicked: panel.choice.turnOther(1)
        }
        Item { Layout.fillWidth: true }
    }
    RowLayout {
        visible: panel.choice.needsWords
        Layout.fillWidth: true
        spacing: Tokens.gap8
        PlainText {
            text: panel.choice.words.includes(",") ? qsTr("Its values:") : qsTr("One click is:")
            wrapMode: Text.NoWrap
        }
        TextLine {
            Layout.fillWidth: true
            label: qsTr("How much one click is, or the values in turn")
            text: panel.choice.words
            onTextEdited: panel.choice.words = text
            onSubmitted: panel.begun()
        }
    }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        ActionButton {
            text: qsTr("Begin")
            primary: true
            keyName: qsTr("Return")
            onClicked: panel.begun()
        }
        ActionButton {
            text: qsTr("Back")
            keyName: qsTr("Esc")
            onClicked: panel.closed()
        }
    }
}
