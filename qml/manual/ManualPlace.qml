import QtQuick
import QtQuick.Layouts
import Flowhand

/// The manual: its pages on the left, the one that is read on the right.
FocusScope {
    id: place

    required property ManualPresenter manual
    signal closed

    function pressKey(key: int): bool {
        switch (key) {
        case Qt.Key_Down:
            manual.choose(manual.chosen + 1);
            return true;
        case Qt.Key_Up:
            manual.choose(manual.chosen - 1);
            return true;
        case Qt.Key_PageDown:
        case Qt.Key_Space:
            flick.scroll(1);
            return true;
        case Qt.Key_PageUp:
            flick.scroll(-1);
            return true;
        case Qt.Key_Escape:
            closed();
            return true;
        default:
            return false;
        }
    }

    Component.onCompleted: manual.enter()

    RowLayout {
        anchors.fill: parent
        spacing: Tokens.gap16
        ColumnLayout {
            Layout.fillHeight: true
            Layout.preferredWidth: 300 * Tokens.textScale
            Layout.maximumWidth: 300 * Tokens.textScale
            spacing: Tokens.gap12
            PlainText {
                text: qsTr("Manual")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
            }
            ListView {
                id: list
                Layout.fillWidth: true
                Layout.fillHeight: true
                clip: true
                focus: true
                keyNavigationEnabled: false
                currentIndex: place.manual.chosen
                highlightMoveDuration: 0
                model: place.manual.pages
                ThinScrollBar.vertical: ThinScrollBar {}
                Accessible.role: Accessible.List
                Accessible.name: qsTr("The manual's pages")
                delegate: ChoosableLine {
                    id: line
                    required property int rowId
                    required property string title
                    width: list.width - 12
                    implicitHeight: words.implicitHeight + 16
                    spoken: title
                    chosen: rowId === place.manual.chosen
                    onPicked: place.manual.choose(rowId)
                    PlainText {
                        id: words
                        anchors { left: parent.left; right: parent.right; verticalCenter: parent.verticalCenter; margins: Tokens.gap8 }
                        text: line.title
                        font.weight: line.chosen ? Font.DemiBold : Font.Normal
                        Accessible.ignored: true
                    }
                }
            }
            QuietButton {
                text: qsTr("Back")
                keyName: qsTr("Esc")
                onClicked: place.closed()
            }
        }
        Card {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Flickable {
                id: flick
                anchors.fill: parent
                anchors.margins: Tokens.gap24
                contentHeight: page.height
                clip: true
                boundsBehavior: Flickable.StopAtBounds
                ThinScrollBar.vertical: ThinScrollBar {}

                function scroll(pages: int): void {
                    contentY = Math.max(0, Math.min(contentHeight - height, contentY + pages * height * 0.9));
                }

                Connections {
                    target: place.manual
                    function onChosenChanged(): void {
                        flick.contentY = 0;
                    }
                }
                Text {
                    id: page
                    width: Math.min(flick.width - 12, 860 * Tokens.textScale)
                    // Pictures are as wide as the page.
                    text: place.manual.failure !== "" ? place.manual.failure
                        : place.manual.text.replace(/<img /g, `<img width="${Math.floor(width)}" `)
                    textFormat: Text.RichText
                    wrapMode: Text.Wrap
                    font.family: Tokens.family
                    font.pixelSize: Tokens.bodySize
                    color: Tokens.text
                    lineHeight: 1.15
                    linkColor: Tokens.info
                    Accessible.role: Accessible.StaticText
                    Accessible.name: place.manual.title
                }
            }
        }
    }
}
