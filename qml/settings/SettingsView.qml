import QtQuick
import QtQuick.Layouts
import Flowhand

/// What a pilot chooses for good, by sections. Every choice holds at once.
FocusScope {
    id: view

    required property Settings settings
    required property Sound sound
    required property KeyChoice keys
    required property DelayMeter meter
    /// The hands are on a rig, not on the screen.
    required property bool withRig
    required property bool withRun
    property int section: 0
    signal closed

    readonly property list<string> names: [qsTr("Look"), qsTr("Sound"), qsTr("Flying"), qsTr("Pilots"), qsTr("Keys"), qsTr("Data")]
    readonly property list<Component> sections: [look, heard, flying, pilots, keyboard, kept]

    focus: true
    Keys.onEscapePressed: closed()
    Keys.onPressed: event => {
        const by = event.key === Qt.Key_PageDown ? 1 : event.key === Qt.Key_PageUp ? -1 : 0;
        section = Math.max(0, Math.min(names.length - 1, section + by));
        event.accepted = by !== 0;
    }
    onSectionChanged: flick.contentY = 0

    ColumnLayout {
        anchors.fill: parent
        anchors.leftMargin: Tokens.gap8
        anchors.rightMargin: Tokens.gap8
        spacing: Tokens.gap12
        RowLayout {
            Layout.fillWidth: true
            PlainText {
                Layout.fillWidth: true
                text: qsTr("Settings")
                font.pixelSize: Tokens.titleSize
                font.weight: Font.DemiBold
            }
            QuietButton {
                text: qsTr("Back")
                keyName: qsTr("Esc")
                onClicked: view.closed()
            }
        }
        Flow {
            Layout.fillWidth: true
            spacing: Tokens.gap4
            Accessible.role: Accessible.PageTabList
            Accessible.name: qsTr("Sections")
            Repeater {
                model: view.names
                TabButton {
                    required property int index
                    required property string modelData
                    text: modelData
                    isHere: index === view.section
                    focus: isHere
                    onClicked: view.section = index
                }
            }
        }
        Card {
            Layout.fillWidth: true
            Layout.fillHeight: true
            Flickable {
                id: flick
                anchors.fill: parent
                anchors.margins: Tokens.gap24
                anchors.rightMargin: Tokens.gap12
                contentHeight: loader.height
                clip: true
                ThinScrollBar.vertical: ThinScrollBar {}

                /// What has the keyboard is seen.
                readonly property Item focused: view.Window.activeFocusItem
                onFocusedChanged: {
                    if (focused === null || !loader.activeFocus)
                        return;
                    const top = focused.mapToItem(loader, 0, 0).y;
                    contentY = Math.max(0, Math.min(top - Tokens.gap48, Math.max(contentY, top + focused.height + Tokens.gap24 - height)));
                }
                Loader {
                    id: loader
                    width: flick.width - Tokens.gap24
                    sourceComponent: view.sections[view.section]
                }
            }
        }
    }
    Component {
        id: look
        LookSettings { settings: view.settings }
    }
    Component {
        id: heard
        SoundSettings {
            settings: view.settings
            sound: view.sound
            meter: view.meter
            withRig: view.withRig
        }
    }
    Component {
        id: flying
        FlyingSettings { settings: view.settings }
    }
    Component {
        id: pilots
        PilotSettings { settings: view.settings }
    }
    Component {
        id: keyboard
        KeySettings { keys: view.keys }
    }
    Component {
        id: kept
        DataSettings {
            settings: view.settings
            changeable: !view.withRun
        }
    }
}
