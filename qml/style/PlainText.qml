import QtQuick
import Flowhand

/// All running text: the token's face and size, and never taken for markup.
Text {
    color: Tokens.text
    font.family: Tokens.family
    font.pixelSize: Tokens.bodySize
    textFormat: Text.PlainText
    wrapMode: Text.Wrap
    Accessible.role: Accessible.StaticText
    Accessible.name: text
}
