import QtQuick
import Flowhand

/// The keys that go with a timeline.
QtObject {
    required property ReviewTimeline timeline

    /// False when the key means nothing to it.
    function press(key: int, modifiers: int): bool {
        const isFar = (modifiers & Qt.ShiftModifier) !== 0;
        switch (key) {
        case Qt.Key_Left:
            timeline.nudge(isFar ? -10 : -1);
            return true;
        case Qt.Key_Right:
            timeline.nudge(isFar ? 10 : 1);
            return true;
        case Qt.Key_Home:
            timeline.hold(0);
            return true;
        case Qt.Key_End:
            timeline.hold(timeline.length);
            return true;
        case Qt.Key_PageDown:
            timeline.nextDeviation();
            return true;
        case Qt.Key_PageUp:
            timeline.previousDeviation();
            return true;
        case Qt.Key_Period:
            timeline.nextChange();
            return true;
        case Qt.Key_Comma:
            timeline.previousChange();
            return true;
        case Qt.Key_J:
            timeline.previousStep();
            return true;
        case Qt.Key_K:
            timeline.nextStep();
            return true;
        case Qt.Key_Plus:
        case Qt.Key_Equal:
            timeline.zoomHeld(1.5);
            return true;
        case Qt.Key_Minus:
            timeline.zoomHeld(1 / 1.5);
            return true;
        case Qt.Key_F:
            timeline.fit();
            return true;
        case Qt.Key_Space:
            timeline.togglePlay();
            return true;
        case Qt.Key_S:
            timeline.slower();
            return true;
        case Qt.Key_D:
            timeline.faster();
            return true;
        case Qt.Key_L:
            timeline.toggleLoop();
            return true;
        case Qt.Key_A:
            timeline.setA();
            return true;
        case Qt.Key_B:
            timeline.setB();
            return true;
        case Qt.Key_C:
            timeline.clearMarks();
            return true;
        default:
            return false;
        }
    }
}
