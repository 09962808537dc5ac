import QtQuick
import Flowhand

/// The ground from above with the aircraft on it, in the window's colours.
Rectangle {
    id: drawing

    required property GroundPresenter ground

    radius: Tokens.corner
    color: Tokens.sunken
    GroundPicture {
        anchors.fill: parent
        ground: drawing.ground
        pavement: Tokens.ground
        edge: Tokens.line
        line: Tokens.accent
        ink: Tokens.text
        trail: Tokens.quiet
        body: Tokens.raised
        corner: Tokens.corner
    }
}
