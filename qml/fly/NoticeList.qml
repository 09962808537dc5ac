import QtQuick
import QtQuick.Layouts
import Flowhand

/// What the pilot should know, newest last.
ColumnLayout {
    id: list

    required property RowModel notices

    visible: notices.count > 0
    spacing: Tokens.gap4

    Repeater {
        model: list.notices
        NoticeLine {
            required property string words
            Layout.fillWidth: true
            verdict: Verdict.Info
            text: words
        }
    }
}
