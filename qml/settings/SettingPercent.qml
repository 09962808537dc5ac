import QtQuick
import QtQuick.Layouts
import QtQuick.Templates as T
import Flowhand

/// A setting in percent: dragged, or changed by the arrow keys in steps of ten.
ColumnLayout {
    id: setting

    required property string label
    property string hint: ""
    required property int value
    property int least: 0
    property int most: 100
    signal picked(value: int)

    spacing: Tokens.gap8

    PlainText {
        Layout.fillWidth: true
        text: qsTr("%1: %2 %").arg(setting.label).arg(setting.value)
        font.weight: Font.DemiBold
    }
    T.Slider {
        id: slider
        Layout.fillWidth: true
        Layout.maximumWidth: 420 * Tokens.textScale
        implicitHeight: Tokens.bodySize * 2
        from: setting.least
        to: setting.most
        stepSize: 10
        snapMode: T.Slider.SnapAlways
        // What lies under the pointer does not grow while it is dragged.
        live: false
        value: setting.value
        focusPolicy: Qt.TabFocus
        Accessible.role: Accessible.Slider
        Accessible.name: setting.label
        onMoved: setting.picked(Math.round(value))

        background: Rectangle {
            anchors.verticalCenter: parent.verticalCenter
            width: slider.width
            height: 6
            radius: 3
            color: Tokens.sunken
            border.width: 1
            border.color: Tokens.line
        }
        handle: Rectangle {
            x: slider.visualPosition * (slider.width - width)
            anchors.verticalCenter: parent.verticalCenter
            width: Tokens.bodySize
            height: slider.implicitHeight * 0.8
            radius: 4
            color: Tokens.text
            FocusFrame { shown: slider.visualFocus }
        }
    }
    PlainText {
        visible: setting.hint !== ""
        Layout.fillWidth: true
        text: setting.hint
        color: Tokens.quiet
    }
}
