#include "presenter/settingslinks.h"

#include "presenter/flypresenter.h"
#include "presenter/settings.h"

namespace flowhand {

void linkSettings(Settings& settings, FlyPresenter& fly) {
    const auto follow = [&settings, &fly] {
        fly.setHelp(settings.help());
        fly.setPilot(settings.pilot());
        fly.run()->setLength(settings.length());
    };
    follow();
    fly.setDelays([&settings](const QString& rig) {
        return settings.delayOf(rig);
    });
    fly.feed()->choose(settings.feed());
    QObject::connect(&settings, &Settings::changed, &fly, follow);
    QObject::connect(&fly, &FlyPresenter::handsChosen, &settings, [&settings](bool hasControls) {
        settings.setHands(hasControls ? Settings::Hands::Rig : Settings::Hands::Screen);
    });
    QObject::connect(fly.feed(), &FeedPresenter::chosenChanged, &settings, [&settings, &fly] {
        settings.setFeed(fly.feed()->chosen());
    });
}

} // namespace flowhand
