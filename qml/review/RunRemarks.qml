import QtQuick
import QtQuick.Layouts
import Flowhand

/// The run as a whole: errors and how they were put right, what went on, and what this rig could not observe.
Flickable {
    id: flick

    required property ReviewPresenter review
    readonly property RunReview run: review.run

    contentHeight: column.implicitHeight
    clip: true
    ThinScrollBar.vertical: ThinScrollBar {}
    ColumnLayout {
        id: column
        x: Tokens.gap8
        width: flick.width - 20
        spacing: Tokens.gap8
        PlainText {
            text: qsTr("Write it down")
            font.weight: Font.DemiBold
        }
        Flow {
            Layout.fillWidth: true
            spacing: 2
            QuietButton {
                text: qsTr("Debrief to print")
                keyName: "E"
                onClicked: flick.review.exportAs(ReviewPresenter.Page)
            }
            QuietButton {
                text: qsTr("Events as CSV")
                onClicked: flick.review.exportAs(ReviewPresenter.Events)
            }
            QuietButton {
                text: qsTr("Signals as CSV")
                onClicked: flick.review.exportAs(ReviewPresenter.Signals)
            }
            QuietButton {
                text: qsTr("The whole run")
                Accessible.description: qsTr("One file that another Flowhand can take in")
                onClicked: flick.review.exportAs(ReviewPresenter.Archive)
            }
        }
        PlainText {
            visible: text !== ""
            Layout.fillWidth: true
            text: flick.review.written
            font.pixelSize: Tokens.quietSize
            color: Tokens.quiet
            wrapMode: Text.WrapAnywhere
        }
        PlainText {
            Layout.topMargin: Tokens.gap8
            text: qsTr("Errors, and whether they were put right")
            font.weight: Font.DemiBold
        }
        PlainText {
            visible: flick.run.repairs.count === 0
            Layout.fillWidth: true
            text: qsTr("No control was moved wrongly, and no guard was broken.")
            color: Tokens.quiet
        }
        Repeater {
            model: flick.run.repairs
            RemarkLine {
                Layout.fillWidth: true
                onPicked: flick.run.timeline.hold(time)
            }
        }
        PlainText {
            Layout.topMargin: Tokens.gap8
            text: qsTr("To know of this run")
            font.weight: Font.DemiBold
        }
        Repeater {
            model: flick.run.remarks
            RemarkLine {
                Layout.fillWidth: true
            }
        }
    }
}
