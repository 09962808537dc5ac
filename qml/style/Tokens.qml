pragma Singleton
import QtQuick
import Flowhand

/// Every colour, distance, type size, time and key name on screen. Names say what a colour is for, never what it looks like.
QtObject {
    id: tokens

    /// "system" follows the desktop's palette; "dark" and "light" do not.
    property string theme: "system"
    /// 1.0 to 2.0, for all type sizes.
    property real textScale: 1.0
    property bool reducedMotion: false

    /// Which key does what; none: the usual ones.
    property KeyChoice keyChoice: null

    readonly property SystemPalette desktop: SystemPalette {}
    readonly property bool isDark: theme === "system" ? desktop.window.hslLightness < 0.5 : theme === "dark"

    readonly property color ground: isDark ? "#1B1D20" : "#F6F3EE"
    readonly property color raised: isDark ? "#25282C" : "#FFFFFF"
    readonly property color sunken: isDark ? "#141618" : "#EAE5DC"
    readonly property color line: isDark ? "#6F7680" : "#837C71"
    readonly property color text: isDark ? "#ECE8E1" : "#22252A"
    readonly property color quiet: isDark ? "#A9ADB3" : "#585D64"
    readonly property color accent: isDark ? "#E0A06A" : "#94501C"
    readonly property color accentText: isDark ? "#1B1D20" : "#FFFFFF"
    readonly property color done: isDark ? "#5CC4A4" : "#0F6B55"
    readonly property color late: isDark ? "#E3BF57" : "#7A5A00"
    readonly property color wrong: isDark ? "#F08A78" : "#B02E1F"
    readonly property color unsure: isDark ? "#A7A6E8" : "#4F4AA8"
    readonly property color info: isDark ? "#86B7E0" : "#1F5C92"

    readonly property int gap4: 4
    readonly property int gap8: 8
    readonly property int gap12: 12
    readonly property int gap16: 16
    readonly property int gap24: 24
    readonly property int gap32: 32
    readonly property int gap48: 48
    readonly property int corner: 6
    readonly property int cardCorner: 10

    readonly property string family: "Open Sans"
    readonly property int quietSize: Math.round(13 * textScale)
    readonly property int bodySize: Math.round(15 * textScale)
    readonly property int strongSize: Math.round(18 * textScale)
    readonly property int titleSize: Math.round(24 * textScale)

    readonly property int quickTime: reducedMotion ? 0 : 120
    readonly property int moveTime: reducedMotion ? 0 : 200
    /// How long the verdict of a step stays in place, in ms.
    readonly property int verdictTime: 1200

    /// The due step's type size: readable from a metre.
    function dueSize(windowHeight: real): int {
        return Math.max(44, Math.ceil(windowHeight / 14));
    }

    /// No due step is smaller than this.
    function smallestDueSize(windowHeight: real): int {
        return Math.max(44, Math.ceil(windowHeight / 16));
    }

    /// What the keys with these usual names, "Q A", are called as the pilot has chosen them.
    function keyNames(usual: string): string {
        return keyChoice !== null && keyChoice.revision >= 0 ? keyChoice.shown(usual) : usual;
    }

    /// Whether a window is so low that ornaments have to go.
    function isLow(windowHeight: real): bool {
        return windowHeight < 720 * textScale;
    }

    /// The colour of a verdict; `verdict` is a Verdict.Kind.
    function verdictColor(verdict: int): color {
        switch (verdict) {
        case Verdict.Done: return done;
        case Verdict.Late: return late;
        case Verdict.Wrong: return wrong;
        case Verdict.OutOfOrder: return wrong;
        case Verdict.Unsure: return unsure;
        case Verdict.Info: return info;
        case Verdict.Due: return accent;
        default: return quiet;
        }
    }
}
