import QtQuick
import QtQuick.Layouts
import Flowhand

/// What was said of the run: the pilot's own account first, then the instructor's words.
Item {
    id: panel

    required property ReviewPresenter review
    readonly property ReviewNotes notes: review.notes

    ColumnLayout {
        anchors.fill: parent
        spacing: Tokens.gap8
        PlainText {
            visible: !panel.notes.hasAccount
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap8
            text: qsTr("The pilot's own account comes first; then rulings, causes, marks and what is practised next.")
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
        }
        Flow {
            Layout.fillWidth: true
            spacing: 2
            QuietButton {
                text: qsTr("Note here")
                keyName: "N"
                onClicked: panel.review.noteHere()
            }
            QuietButton {
                text: qsTr("Account")
                keyName: "Q"
                onClicked: panel.notes.begin(ReviewNotes.Account)
            }
            QuietButton {
                text: qsTr("Objective")
                keyName: "O"
                onClicked: panel.notes.begin(ReviewNotes.Objective)
            }
            QuietButton {
                enabled: panel.notes.hasAccount
                opacity: enabled ? 1 : 0.5
                text: qsTr("Practise next")
                keyName: "P"
                onClicked: panel.notes.begin(ReviewNotes.Practice)
            }
        }
        PlainText {
            visible: list.count === 0
            Layout.fillWidth: true
            Layout.leftMargin: Tokens.gap8
            text: qsTr("No note yet. N and Return put one at the held time.")
            color: Tokens.quiet
        }
        ListView {
            id: list
            Layout.fillWidth: true
            Layout.fillHeight: true
            clip: true
            keyNavigationEnabled: false
            model: panel.notes.lines
            ThinScrollBar.vertical: ThinScrollBar {}
            delegate: ReviewNoteLine {
                required property int index
                width: list.width - 12
                onPicked: panel.review.run.timeline.hold(time)
                onRemoved: panel.notes.remove(index)
            }
        }
        PlainText {
            visible: !panel.notes.writing
            Layout.leftMargin: Tokens.gap8
            text: qsTr("Marks, 1 to 5")
            font.weight: Font.DemiBold
        }
        Repeater {
            model: panel.notes.marks
            PhaseMarkLine {
                visible: !panel.notes.writing
                Layout.fillWidth: true
                Layout.leftMargin: Tokens.gap8
                Layout.rightMargin: Tokens.gap8
                notes: panel.notes
                enabled: panel.notes.hasAccount
                onMarked: mark => panel.notes.mark(rowId, mark)
            }
        }
    }
}
