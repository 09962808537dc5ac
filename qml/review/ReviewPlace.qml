import QtQuick
import Flowhand

/// The Review place: the stored runs, or the one that is gone through.
FocusScope {
    id: place

    required property ReviewPresenter review
    signal flyAsked

    function pressKey(key: int, modifiers: int): bool {
        return (loader.item as ReviewView)?.pressKey(key, modifiers) ?? false;
    }

    Component.onCompleted: review.enter()

    Loader {
        id: loader
        anchors.fill: parent
        focus: true
        sourceComponent: place.review.stage === ReviewPresenter.Reviewing ? run : list
    }
    Component {
        id: list
        RunListView {
            review: place.review
            onFlyAsked: place.flyAsked()
        }
    }
    Component {
        id: run
        RunReviewView { review: place.review }
    }
}
