import QtQuick
import Flowhand

/// A raised sheet of paper.
Rectangle {
    color: Tokens.raised
    radius: Tokens.cardCorner
}
