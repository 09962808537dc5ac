#include "presenter/cardpage.h"

#include <QFile>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QTextDocument>

#include "paint/panelpicture.h"

namespace flowhand {

namespace {

constexpr int kPdfResolution = 300;       ///< dots an inch
constexpr double kMarginMillimetres = 14; ///< as the page's style has it
constexpr int kPictureDots = 1800;        ///< width of the plan's image: 10 pt labels stay sharp

const char* const kPaperStyle = R"(
h1 { font-size: 18pt; font-weight: 600; } h2 { font-size: 14pt; font-weight: 600; margin-top: 14pt; }
p, td, th, li { font-size: 12pt; } .note { font-weight: 600; } .critical { font-weight: 700; } .said { font-style: italic; }
)";

QString between(const QString& html, const QString& from, const QString& to) {
    const qsizetype begin = html.indexOf(from);
    const qsizetype end = html.indexOf(to, begin);
    return begin < 0 || end < 0 ? QString() : html.mid(begin, end - begin + to.size());
}

QImage imageOf(const QString& panel) {
    QImage image(kPictureDots, qRound(kPictureDots * panelRatio(panel)), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintPanel(painter, panel, kPictureDots, PanelInk());
    return image;
}

} // namespace

QString richText(QString html) {
    return html
        .replace(QLatin1String("<table>"), QLatin1String("<table width=\"100%\" cellspacing=\"0\" cellpadding=\"5\">"))
        .replace(QLatin1String("<th"), QLatin1String("<th align=\"left\""))
        .replace(QLatin1String("<th align=\"left\"ead"), QLatin1String("<thead"))
        .replace(QLatin1String("class=\"number\""), QLatin1String("width=\"36\""))
        .replace(QLatin1String("class=\"cue\""), QLatin1String("width=\"37%\""))
        .replace(QLatin1String("class=\"seat\""), QLatin1String("width=\"17%\""))
        .replace(QLatin1String("class=\"box\""), QLatin1String("width=\"28\""))
        .replace(QLatin1String("<td class=\"critical\">"), QLatin1String("<td style=\"font-weight:600\">"))
        .replace(QLatin1String("<span class=\"said\">"), QLatin1String("<span style=\"font-style:italic\">"));
}

CardPage cardPage(const QString& html) {
    CardPage page;
    page.panel = between(html, QStringLiteral("<svg"), QStringLiteral("</svg>"));
    QString body = between(html, QStringLiteral("<body>"), QStringLiteral("</body>"));
    static const QRegularExpression pictures(QStringLiteral("(<h2>The way over the cockpit</h2>\\s*)?<svg.*?</svg>"),
                                             QRegularExpression::DotMatchesEverythingOption);
    page.words = richText(body.remove(pictures).remove(QLatin1String("<body>")).remove(QLatin1String("</body>")));
    return page;
}

Status writeCardPdf(const QString& html, const QString& title, const QString& file) {
    if (QFile target(file); !target.open(QIODevice::WriteOnly))
        return failure("unwritable-file", "this file cannot be written: " + target.errorString().toStdString(),
                       {file.toStdString()});
    const CardPage page = cardPage(html);
    QPdfWriter writer(file);
    writer.setResolution(kPdfResolution);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF(kMarginMillimetres, kMarginMillimetres, kMarginMillimetres, kMarginMillimetres),
                          QPageLayout::Millimeter);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Flowhand"));
    QTextDocument document;
    document.setDefaultFont(QFont(QStringLiteral("Open Sans"), 12));
    document.setDefaultStyleSheet(QString::fromLatin1(kPaperStyle));
    QString body = page.words;
    if (!page.panel.isEmpty()) {
        document.addResource(QTextDocument::ImageResource, QUrl(QStringLiteral("panel")), imageOf(page.panel));
        body += QStringLiteral("<h2>%1</h2><p><img src=\"panel\" width=\"%2\"></p>")
                    .arg(QObject::tr("The cockpit"))
                    .arg(640);
    }
    document.setHtml(body);
    document.print(&writer);
    return {};
}

} // namespace flowhand
