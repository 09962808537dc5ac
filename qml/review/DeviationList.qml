import QtQuick
import Flowhand

/// What cost points, worst first. The figures before a line lead to it.
Item {
    id: panel

    required property RunReview run

    PlainText {
        anchors { left: parent.left; right: parent.right; top: parent.top; margins: Tokens.gap8 }
        visible: panel.run.deviations.count === 0
        text: qsTr("Nothing cost points in this run.")
        color: Tokens.quiet
    }
    ListView {
        id: list
        anchors.fill: parent
        clip: true
        keyNavigationEnabled: false
        model: panel.run.deviations
        currentIndex: panel.run.chosenDeviation
        highlightMoveDuration: 0
        ThinScrollBar.vertical: ThinScrollBar {}
        delegate: DeviationLine {
            required property int index
            width: list.width - 12
            chosen: index === panel.run.chosenDeviation
            onPicked: panel.run.chooseDeviation(index)
        }
    }
}
