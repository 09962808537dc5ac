#pragma once

namespace flowhand {

class FlyPresenter;
class Settings;

/// Lets the Fly place do as the settings say, now and at each change, and the settings keep what is chosen in Fly. Both
/// must outlive the link, which ends with either.
void linkSettings(Settings& settings, FlyPresenter& fly);

} // namespace flowhand
