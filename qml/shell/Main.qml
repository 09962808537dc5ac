import QtQuick
import QtQuick.Window
import Flowhand

Window {
    id: window

    required property FlyPresenter fly
    required property BenchPresenter bench
    required property ReviewPresenter review
    required property ProgressPresenter progress
    required property LibraryPresenter library
    required property ManualPresenter manual
    required property Settings settings
    required property Sound sound

    width: 1280
    height: 800
    minimumWidth: 1024
    minimumHeight: 640
    visible: true
    color: Tokens.ground
    title: qsTr("Flowhand")

    Binding {
        target: Tokens
        property: "theme"
        value: window.settings.theme
    }
    Binding {
        target: Tokens
        property: "textScale"
        value: window.settings.textPercent / 100
    }
    Binding {
        target: Tokens
        property: "reducedMotion"
        value: window.settings.motion === "reduced"
    }
    Shell {
        anchors.fill: parent
        fly: window.fly
        bench: window.bench
        review: window.review
        progress: window.progress
        library: window.library
        manual: window.manual
        sound: window.sound
        settings: window.settings
    }
}
