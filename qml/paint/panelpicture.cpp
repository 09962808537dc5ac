#include "paint/panelpicture.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QRegularExpression>
#include <QXmlStreamReader>

namespace flowhand {

namespace {

constexpr double kTextSize = 18.0; ///< of words without a size of their own, as the page's style has it

/// Draws one shape after the other.
class Plan {
public:
    Plan(QPainter& painter, const PanelInk& ink) : m_painter(painter), m_ink(ink) {}

    void draw(QXmlStreamReader& xml) {
        const QXmlStreamAttributes look = xml.attributes();
        if (xml.name() == QLatin1String("rect"))
            drawRect(look);
        else if (xml.name() == QLatin1String("path"))
            drawPath(look);
        else if (xml.name() == QLatin1String("text"))
            drawText(look, xml.readElementText());
    }

private:
    static double number(const QXmlStreamAttributes& look, const char* name, double otherwise = 0.0) {
        bool isNumber = false;
        const double value = look.value(QLatin1String(name)).toDouble(&isNumber);
        return isNumber ? value : otherwise;
    }

    /// The page's colours by what they are for.
    [[nodiscard]] QColor colorOf(QStringView name) const {
        return name == QLatin1String("#f4f4f4") ? m_ink.block
               : name == QLatin1String("#fff")  ? m_ink.paper
               : name == QLatin1String("#111")  ? m_ink.ink
                                                : m_ink.line;
    }

    void drawRect(const QXmlStreamAttributes& look) {
        const QRectF box(number(look, "x"), number(look, "y"), number(look, "width"), number(look, "height"));
        const double radius = number(look, "rx");
        const bool hasLine = look.hasAttribute(QLatin1String("stroke"));
        m_painter.setBrush(colorOf(look.value(QLatin1String("fill"))));
        m_painter.setPen(hasLine ? QPen(colorOf(look.value(QLatin1String("stroke"))), number(look, "stroke-width", 1.0))
                                 : QPen(Qt::NoPen));
        m_painter.drawRoundedRect(box, radius, radius);
    }

    /// From a point with one bow to another: "M1 2 Q3 4 5 6".
    void drawPath(const QXmlStreamAttributes& look) {
        static const QRegularExpression figure(QStringLiteral("-?[0-9.]+"));
        QList<double> at;
        for (auto found = figure.globalMatch(look.value(QLatin1String("d")).toString()); found.hasNext();)
            at << found.next().captured().toDouble();
        if (at.size() != 6)
            return;
        QPainterPath path(QPointF(at[0], at[1]));
        path.quadTo(at[2], at[3], at[4], at[5]);
        QColor ink = m_ink.ink;
        ink.setAlphaF(static_cast<float>(number(look, "stroke-opacity", 1.0)));
        m_painter.setPen(QPen(ink, number(look, "stroke-width", 1.0)));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawPath(path);
    }

    void drawText(const QXmlStreamAttributes& look, const QString& words) {
        static const QRegularExpression sizeIn(QStringLiteral("font-size:([0-9.]+)px"));
        const QString style = look.value(QLatin1String("style")).toString();
        const auto size = sizeIn.match(style);
        QFont font(m_ink.family);
        font.setPixelSize(qMax(1, qRound(size.hasMatch() ? size.captured(1).toDouble() : kTextSize)));
        if (look.value(QLatin1String("class")).contains(QLatin1Char('b')))
            font.setWeight(QFont::DemiBold);
        QColor ink = style.contains(QLatin1String("fill:#fff")) ? m_ink.paper : m_ink.ink;
        ink.setAlphaF(static_cast<float>(number(look, "fill-opacity", 1.0)));
        const bool isCentred = look.value(QLatin1String("text-anchor")) == QLatin1String("middle");
        const double wide = QFontMetricsF(font).horizontalAdvance(words);
        m_painter.setFont(font);
        m_painter.setPen(ink);
        m_painter.drawText(QPointF(number(look, "x") - (isCentred ? wide / 2.0 : 0.0), number(look, "y")), words);
    }

    QPainter& m_painter;
    const PanelInk& m_ink;
};

/// Width and height, in the plan's own units.
QSizeF sizeOf(const QString& svg) {
    static const QRegularExpression box(QStringLiteral("viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\""));
    const auto found = box.match(svg);
    return found.hasMatch() ? QSizeF(found.captured(1).toDouble(), found.captured(2).toDouble()) : QSizeF();
}

} // namespace

double panelRatio(const QString& svg) {
    const QSizeF size = sizeOf(svg);
    return size.width() > 0.0 ? size.height() / size.width() : 0.0;
}

void paintPanel(QPainter& painter, const QString& svg, double width, const PanelInk& ink) {
    const QSizeF size = sizeOf(svg);
    if (size.isEmpty())
        return;
    painter.save();
    painter.scale(width / size.width(), width / size.width());
    Plan plan(painter, ink);
    QXmlStreamReader xml(svg);
    while (!xml.atEnd())
        if (xml.readNext() == QXmlStreamReader::StartElement)
            plan.draw(xml);
    painter.restore();
}

PanelPicture::PanelPicture(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    const auto repaint = [this] {
        update();
    };
    connect(this, &PanelPicture::svgChanged, this, repaint);
    connect(this, &PanelPicture::inkChanged, this, repaint);
}

void PanelPicture::paint(QPainter* painter) {
    PanelInk ink;
    ink.paper = m_paper;
    ink.block = m_block;
    ink.ink = m_inkColor;
    ink.line = m_line;
    ink.family = m_family;
    paintPanel(*painter, m_svg, width(), ink);
}

} // namespace flowhand
