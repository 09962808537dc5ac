import QtQuick
import Flowhand

/// The signals that changed in this run, and which of them have a lane.
ListView {
    id: list

    required property ReviewTimeline timeline

    clip: true
    keyNavigationEnabled: false
    model: timeline.choices
    ThinScrollBar.vertical: ThinScrollBar {}
    delegate: ChoosableLine {
        id: line
        required property int rowId
        required property string label
        required property bool shown
        width: list.width - 12
        implicitHeight: words.implicitHeight + 8
        spoken: shown ? qsTr("%1, shown").arg(label) : label
        Accessible.role: Accessible.CheckBox
        Accessible.checkable: true
        Accessible.checked: shown
        onPicked: list.timeline.toggleSignal(rowId)
        VerdictSymbol {
            x: Tokens.gap8
            anchors.verticalCenter: parent.verticalCenter
            width: Tokens.bodySize + 1
            height: width
            verdict: line.shown ? Verdict.Done : Verdict.Waiting
            color: line.shown ? Tokens.accent : Tokens.line
            ground: line.ground
        }
        PlainText {
            id: words
            x: Tokens.gap8 + Tokens.bodySize + 9
            width: parent.width - x
            anchors.verticalCenter: parent.verticalCenter
            text: line.label
            color: line.shown ? Tokens.text : Tokens.quiet
            elide: Text.ElideRight
            wrapMode: Text.NoWrap
        }
    }
}
