#include "report/panelsvg.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <vector>

#include "procedure/panelareas.h"
#include "report/html.h"

namespace flowhand {

namespace {

constexpr double kWidth = 960.0;
constexpr double kHeight = 1000.0;
constexpr double kGap = 5.0;     ///< between blocks
constexpr double kHead = 30.0;   ///< of a block, for its name
constexpr double kLeast = 140.0; ///< width of a control's box
constexpr double kRow = 56.0;    ///< height of a control's box, with the gap below it
/// Of labels: 10 pt where the picture is as wide as an A4 page's text; smaller where they do not fit.
constexpr double kSize = 18.0;
constexpr double kLeastSize = 11.0;
/// Average advance of a label's letters as a share of its size: enough to know what fits.
constexpr double kLetter = 0.64;

struct Box {
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;
    [[nodiscard]] double middleX() const { return x + width / 2.0; }
    [[nodiscard]] double middleY() const { return y + height / 2.0; }
};

std::string rect(const Box& box, const char* look) {
    return "<rect x=\"" + fixed(box.x) + "\" y=\"" + fixed(box.y) + "\" width=\"" + fixed(box.width) + "\" height=\"" +
           fixed(box.height) + "\" rx=\"3\" " + look + "/>";
}

std::string text(double x, double y, const std::string& words, const char* look) {
    return "<text x=\"" + fixed(x) + "\" y=\"" + fixed(y) + "\" " + look + ">" + escaped(words) + "</text>";
}

class Panel {
public:
    Panel(const Aircraft& aircraft, const Flow* flow) : m_aircraft(aircraft) {
        for (std::size_t i = 0; flow != nullptr && i < flow->steps.size(); ++i)
            if (const std::optional<SignalId> place = placeOf(flow->steps[i]))
                visit(*place, i + 1);
    }

    std::string svg() {
        m_svg = "<svg class=\"picture\" viewBox=\"0 0 " + fixed(kWidth) + " " + fixed(kHeight) +
                "\" role=\"img\" aria-label=\"The cockpit's areas\">";
        for (const PanelArea& area : panelAreas(m_aircraft))
            drawArea(area);
        drawWay();
        drawNumbers();
        return m_svg + "</svg>\n";
    }

private:
    /// The control that a step is about: not the button that only answers, if there is another.
    [[nodiscard]] std::optional<SignalId> placeOf(const Step& step) const {
        if (step.done)
            for (const SignalId id : step.done->condition.signals())
                if (m_aircraft.isControl(id) && m_aircraft.control(id).kind != ControlKind::Button)
                    return id;
        return step.controls.empty() ? std::nullopt : std::optional(step.controls.front());
    }

    void visit(SignalId control, std::size_t number) {
        m_numbers[indexOf(control)].push_back(number);
        if (m_way.empty() || m_way.back() != control)
            m_way.push_back(control);
    }

    void drawArea(const PanelArea& area) {
        const Box block{area.left / 100.0 * kWidth + kGap / 2.0, area.top / 100.0 * kHeight + kGap / 2.0,
                        area.width / 100.0 * kWidth - kGap, area.height / 100.0 * kHeight - kGap};
        m_svg += rect(block, "fill=\"#f4f4f4\" stroke=\"#555\"");
        m_svg += text(block.x + 7.0, block.y + 21.0, area.name, "class=\"t b\"");
        std::vector<SignalId> controls;
        for (const CockpitControl& control : m_aircraft.controls)
            if (control.area == area.name)
                controls.push_back(control.signal);
        const auto count = static_cast<double>(controls.size());
        const double inner = block.width - 8.0;
        const double rows = std::max(1.0, std::floor((block.height - kHead - 2.0) / kRow));
        const double columns = std::max({1.0, std::ceil(count / rows), std::min(count, std::floor(inner / kLeast))});
        const double width = inner / columns;
        const double height = std::min(kRow, (block.height - kHead - 2.0) / std::ceil(count / columns));
        for (std::size_t i = 0; i < controls.size(); ++i) {
            const auto at = static_cast<double>(i);
            drawControl(controls[i], {block.x + 4.0 + width * std::fmod(at, columns) + 2.0,
                                      block.y + kHead + height * std::floor(at / columns), width - 4.0, height - 4.0});
        }
    }

    void drawControl(SignalId control, const Box& box) {
        m_boxes[indexOf(control)] = box;
        const bool isUsed = m_numbers.count(indexOf(control)) != 0;
        m_svg +=
            rect(box, isUsed ? "fill=\"#fff\" stroke=\"#111\" stroke-width=\"2\"" : "fill=\"#fff\" stroke=\"#aaa\"");
        std::string label = m_aircraft.control(control).panelLabel;
        const double size =
            std::clamp((box.width - 4.0) / (kLetter * static_cast<double>(label.size())), kLeastSize, kSize);
        const std::string look = "text-anchor=\"middle\" class=\"t\" style=\"font-size:" + fixed(size) + "px\"" +
                                 (isUsed ? "" : " fill-opacity=\"0.65\"");
        m_svg += text(box.middleX(), box.y + box.height / 2.0 + size * 0.36, label, look.c_str());
    }

    /// From control to control in the order of the steps, with a bow, so that there and back are two lines.
    void drawWay() {
        for (std::size_t i = 1; i < m_way.size(); ++i) {
            const Box& from = m_boxes[indexOf(m_way[i - 1])];
            const Box& to = m_boxes[indexOf(m_way[i])];
            const double dx = to.middleX() - from.middleX();
            const double dy = to.middleY() - from.middleY();
            m_svg += "<path d=\"M" + fixed(from.middleX()) + " " + fixed(from.middleY()) + " Q" +
                     fixed(from.middleX() + dx / 2.0 - dy * 0.12) + " " + fixed(from.middleY() + dy / 2.0 + dx * 0.12) +
                     " " + fixed(to.middleX()) + " " + fixed(to.middleY()) +
                     "\" fill=\"none\" stroke=\"#111\" stroke-width=\"1.6\" stroke-opacity=\"0.55\"/>";
        }
    }

    /// The numbers of a control's steps, on its top edge, above the lines.
    void drawNumbers() {
        for (const auto& [control, numbers] : m_numbers) {
            const Box& box = m_boxes[control];
            std::string words;
            for (const std::size_t number : numbers)
                words += (words.empty() ? "" : ", ") + std::to_string(number);
            const double width = 10.0 + 10.0 * static_cast<double>(words.size());
            const Box badge{box.x - 2.0, box.y - 8.0, width, 20.0};
            m_svg += rect(badge, "fill=\"#111\"");
            m_svg += text(badge.middleX(), badge.y + 15.5, words,
                          "text-anchor=\"middle\" class=\"t b\" style=\"font-size:16px;fill:#fff\"");
        }
    }

    const Aircraft& m_aircraft;
    std::map<std::size_t, std::vector<std::size_t>> m_numbers; ///< of steps, from 1, by control
    std::vector<SignalId> m_way;
    std::map<std::size_t, Box> m_boxes; ///< by control
    std::string m_svg;
};

} // namespace

std::string panelSvg(const Aircraft& aircraft, const Flow* flow) {
    return Panel(aircraft, flow).svg();
}

} // namespace flowhand
