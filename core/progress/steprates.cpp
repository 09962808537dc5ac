#include "progress/steprates.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

template <class Item, class Same>
Item& foundOrAdded(std::vector<Item>& items, Same same, Item added) {
    const auto found = std::find_if(items.begin(), items.end(), same);
    return found != items.end() ? *found : *items.insert(items.end(), std::move(added));
}

void take(const StepTry& step, StepRate& rate) {
    rate.title = step.title;
    ++rate.runs;
    rate.wrong += step.mistakes.empty() ? 0 : 1;
    for (const Phrase& mistake : step.mistakes) {
        Instead added{mistake, 0};
        ++foundOrAdded(
              rate.instead,
              [&](const Instead& known) {
                  return known.words.english() == mistake.english(); // older records have no patterns
              },
              std::move(added))
              .runs;
    }
}

} // namespace

double lowestRate(int wrong, int runs) {
    if (runs <= 0)
        return 0.0;
    constexpr double z = 1.96; // 95 %, both sides
    const double n = runs;
    const double p = wrong / n;
    const double centre = p + z * z / (2.0 * n);
    const double spread = z * std::sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n));
    return std::max((centre - spread) / (1.0 + z * z / n), 0.0);
}

std::vector<StepRate> stepRates(const std::vector<const PractisedRun*>& runs) {
    std::vector<StepRate> rates;
    const std::size_t first = runs.size() > kRunsForRates ? runs.size() - kRunsForRates : 0;
    for (std::size_t i = first; i < runs.size(); ++i)
        for (const StepTry& step : runs[i]->steps) {
            StepRate added;
            added.id = step.id;
            take(step, foundOrAdded(
                           rates,
                           [&](const StepRate& known) {
                               return known.id == step.id;
                           },
                           std::move(added)));
        }
    std::erase_if(rates, [](const StepRate& rate) {
        return rate.wrong == 0;
    });
    std::stable_sort(rates.begin(), rates.end(), [](const StepRate& a, const StepRate& b) {
        return lowestRate(a.wrong, a.runs) > lowestRate(b.wrong, b.runs);
    });
    for (StepRate& rate : rates)
        std::stable_sort(rate.instead.begin(), rate.instead.end(), [](const Instead& a, const Instead& b) {
            return a.runs > b.runs;
        });
    return rates;
}

} // namespace flowhand
