#pragma once

#include <QColor>
#include <QQuickPaintedItem>
#include <QString>
#include <QtQml/qqmlregistration.h>

class QPainter;

namespace flowhand {

/// With what a plan of the cockpit is painted; as it stands here, on paper.
struct PanelInk {
    QColor paper = QColor(0xff, 0xff, 0xff); ///< controls
    QColor block = QColor(0xf4, 0xf4, 0xf4); ///< areas
    QColor ink = QColor(0x11, 0x11, 0x11);   ///< what is used, and all words
    QColor line = QColor(0x77, 0x77, 0x77);  ///< the other outlines
    QString family = QStringLiteral("Open Sans");
};

/// Paints the plan that core/report/panelsvg.h writes, as wide as `width`; the shapes that it consists of and no
/// others.
void paintPanel(QPainter& painter, const QString& svg, double width, const PanelInk& ink);
/// Height of that plan over its width; 0: there is none.
[[nodiscard]] double panelRatio(const QString& svg);

/// The plan of a cockpit, with the way of a flow's hand over it.
class PanelPicture : public QQuickPaintedItem {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QString svg MEMBER m_svg NOTIFY svgChanged)
    Q_PROPERTY(double ratio READ ratio NOTIFY svgChanged)
    Q_PROPERTY(QColor paper MEMBER m_paper NOTIFY inkChanged)
    Q_PROPERTY(QColor block MEMBER m_block NOTIFY inkChanged)
    Q_PROPERTY(QColor ink MEMBER m_inkColor NOTIFY inkChanged)
    Q_PROPERTY(QColor line MEMBER m_line NOTIFY inkChanged)
    Q_PROPERTY(QString family MEMBER m_family NOTIFY inkChanged)

public:
    explicit PanelPicture(QQuickItem* parent = nullptr);
    void paint(QPainter* painter) override;

    [[nodiscard]] double ratio() const { return panelRatio(m_svg); }

Q_SIGNALS:
    void svgChanged();
    void inkChanged();

private:
    QString m_svg;
    QColor m_paper, m_block, m_inkColor, m_line;
    QString m_family;
};

} // namespace flowhand
