import QtQuick
import QtQuick.Layouts
import Flowhand

/// A setting that is one of a few: its name, what there is, and what it means.
ColumnLayout {
    id: setting

    required property string label
    property string hint: ""
    /// What is kept, and the words for each.
    required property list<string> values
    required property list<string> words
    required property string value
    signal picked(value: string)

    spacing: Tokens.gap8

    PlainText {
        Layout.fillWidth: true
        text: setting.label
        font.weight: Font.DemiBold
    }
    Flow {
        Layout.fillWidth: true
        spacing: Tokens.gap8
        Accessible.role: Accessible.Grouping
        Accessible.name: setting.label
        Repeater {
            model: setting.values
            OptionButton {
                required property int index
                required property string modelData
                text: setting.words[index]
                chosen: modelData === setting.value
                onClicked: setting.picked(modelData)
            }
        }
    }
    PlainText {
        visible: setting.hint !== ""
        Layout.fillWidth: true
        text: setting.hint
        color: Tokens.quiet
    }
}
