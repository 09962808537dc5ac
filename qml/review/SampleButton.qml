import Flowhand

/// Adds the sample runs to the list.
ActionButton {
    required property ReviewPresenter review

    visible: review.samplesOffered
    text: qsTr("Sample runs")
    hint: qsTr("Adds runs flown well and badly by scripted hands, to look at")
    keyName: "S"
    onClicked: review.takeInSamples()
}
