#include "bench/stepdemand.h"

#include <algorithm>

#include "bench/obstacles.h"

namespace flowhand {

namespace {

class Demands {
public:
    Demands(const std::vector<BenchControl>& controls, const std::vector<Reach>& reaches, const CoverageInput& input)
        : m_reaches(reaches), m_input(input), m_demands(controls.size()) {
        for (const BenchControl& control : controls)
            if (control.wiring == "gates")
                lookAtGates(control);
    }

    std::vector<StepDemand> run() {
        for (const Flow* flow : m_input.flows)
            for (std::size_t i = 0; i < flow->steps.size(); ++i)
                for (const SignalId id : controlsNeeded(*flow, i, m_input))
                    if (m_reaches[indexOf(id)].isWired)
                        look(flow->steps[i], id, m_reaches[indexOf(id)]);
        return std::move(m_demands);
    }

private:
    void lookAtGates(const BenchControl& control) {
        const BenchAxis& axis = control.axes.front();
        for (std::size_t i = 0; i < axis.inFile.gates.size(); ++i)
            narrow(m_demands[control.index], 2.0 * static_cast<double>(axis.inFile.gates[i].band),
                   phrase("the gate '{1}'").with(axis.ask.gates[i]));
    }

    void look(const Step& step, SignalId id, const Reach& reach) {
        StepDemand& demand = m_demands[reach.control];
        if (step.within > Duration{} && step.within / kFilterPart < demand.delay) {
            demand.delay = step.within / kFilterPart;
            demand.delayOf = step.title;
        }
        if (reach.perCount <= 0)
            return;
        for (const std::optional<PlacedCondition>* placed : {&step.done, &step.when})
            if (*placed)
                if (const auto width = narrowestJudged((*placed)->condition, id, m_reaches, m_input.aircraft.signals))
                    narrow(demand, *width / reach.perCount, step.title);
        if (step.band && step.band->signal == id)
            narrow(demand,
                   (std::min(step.band->highest, reach.highest) - std::max(step.band->lowest, reach.lowest)) /
                       reach.perCount,
                   step.title);
    }

    static void narrow(StepDemand& demand, double band, const Phrase& of) {
        if (band <= 0 || (demand.band && *demand.band <= band)) // out of reach: for the coverage to say
            return;
        demand.band = band;
        demand.bandOf = of;
    }

    const std::vector<Reach>& m_reaches;
    const CoverageInput& m_input;
    std::vector<StepDemand> m_demands;
};

} // namespace

std::vector<StepDemand> stepDemandsOf(const std::vector<BenchControl>& controls, const std::vector<Reach>& reaches,
                                      const CoverageInput& input) {
    return Demands(controls, reaches, input).run();
}

} // namespace flowhand
