import QtQuick
import Flowhand

/// What the pilot should know, newest last.
Column {
    id: list

    required property RowModel notices

    visible: notices.count > 0
    spacing: Tokens.gap4

    Repeater {
        model: list.notices
        NoticeLine {
            required property string words
            width: list.width
            verdict: Verdict.Info
            text: words
        }
    }
}
