#pragma once

#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "stubrun.h"

namespace flowhand::test {

/// The window in one state, 1,280 by 800, without a display.
struct Shown {
    explicit Shown(const QString& state) : stage(state) {
        stage.fill(view);
        view.resize(1280, 800);
        view.show();
        QCoreApplication::processEvents();
        for (const int key : stage.keys())
            QTest::keyClick(&view, static_cast<Qt::Key>(key));
        QCoreApplication::processEvents();
    }

    /// The first item of a kind that is seen with this text; null: there is none.
    [[nodiscard]] const QQuickItem* find(const QString& text, const char* kind = "QQuickItem") const {
        return findIn(view.rootObject(), text, kind);
    }
    [[nodiscard]] bool hasText(const QString& text) const { return find(text) != nullptr; }

    /// Clicks the button with this text; false when there is none.
    bool click(const QString& text) {
        const QQuickItem* button = find(text, "QQuickAbstractButton");
        if (button == nullptr)
            return false;
        const QPointF middle = button->mapToScene({button->width() / 2, button->height() / 2});
        QTest::mouseClick(&view, Qt::LeftButton, Qt::NoModifier, middle.toPoint());
        QCoreApplication::processEvents();
        return true;
    }

    [[nodiscard]] int place() const { return view.rootObject()->property("place").toInt(); }

    Stage stage;
    QQuickView view; ///< goes first: it shows what the stage has

private:
    static const QQuickItem* findIn(const QQuickItem* item, const QString& text, const char* kind) {
        if (!item->isVisible())
            return nullptr;
        if (item->inherits(kind) && item->property("text").toString() == text)
            return item;
        for (const QQuickItem* child : item->childItems())
            if (const QQuickItem* found = findIn(child, text, kind))
                return found;
        return nullptr;
    }
};

} // namespace flowhand::test
