import QtQuick
import Flowhand

/// Every step: when it was due, how long it took, and what became of it.
ListView {
    id: list

    required property RunReview run

    clip: true
    keyNavigationEnabled: false
    model: run.steps
    currentIndex: run.chosenStep
    highlightMoveDuration: 0
    ThinScrollBar.vertical: ThinScrollBar {}
    delegate: ReviewStepLine {
        required property int index
        width: list.width - 12
        chosen: index === list.run.chosenStep
        onPicked: list.run.chooseStep(index)
    }
}
