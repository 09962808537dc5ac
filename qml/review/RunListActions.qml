import QtQuick
import Flowhand

/// What can be done with the chosen run of the list.
Flow {
    id: actions

    required property ReviewPresenter review
    required property bool isEmpty
    property bool isWriting: false
    /// The tag was given.
    signal tagged

    function beginTag(): void {
        isWriting = !isEmpty;
        tagEntry.forceActiveFocus();
    }

    function tag(): void {
        if (tagEntry.text.trim() !== "")
            review.toggleTag(tagEntry.text);
        tagEntry.text = "";
        isWriting = false;
        tagged();
    }

    spacing: Tokens.gap8

    ActionButton {
        visible: !actions.isEmpty && !actions.isWriting
        primary: true
        text: qsTr("Go through it")
        keyName: qsTr("Return")
        onClicked: actions.review.open(actions.review.chosen)
    }
    ActionButton {
        visible: !actions.isEmpty && !actions.review.deletedShown
        text: qsTr("Reference")
        hint: qsTr("The run that others of its flow are compared with")
        keyName: "R"
        onClicked: actions.review.toggleReference()
    }
    ActionButton {
        visible: !actions.isEmpty && !actions.isWriting && !actions.review.deletedShown
        text: qsTr("Tag")
        hint: qsTr("Adds a word to find it by, or takes it away")
        keyName: "T"
        onClicked: actions.beginTag()
    }
    PlainText {
        visible: actions.isWriting
        height: tagEntry.height
        verticalAlignment: Text.AlignVCenter
        text: qsTr("Tag to add, or to take away")
        color: Tokens.quiet
        wrapMode: Text.NoWrap
    }
    TextLine {
        id: tagEntry
        visible: actions.isWriting
        width: 200 * Tokens.textScale
        label: qsTr("The tag to add, or to take away")
        onSubmitted: actions.tag()
    }
    ActionButton {
        visible: actions.isWriting
        primary: true
        text: qsTr("Tag it")
        keyName: qsTr("Return")
        onClicked: actions.tag()
    }
    ActionButton {
        visible: !actions.isEmpty
        text: actions.review.deletedShown ? qsTr("Restore") : qsTr("Delete")
        keyName: qsTr("Del")
        onClicked: actions.review.remove()
    }
    SampleButton {
        visible: !actions.isEmpty && !actions.isWriting && actions.review.samplesOffered
        review: actions.review
    }
    ActionButton {
        text: actions.review.deletedShown ? qsTr("Stored runs") : qsTr("Deleted runs")
        keyName: "D"
        onClicked: actions.review.toggleDeleted()
    }
}
