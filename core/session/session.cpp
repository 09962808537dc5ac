#include "session/session.h"

#include "session/judge.h"

namespace flowhand {

struct Session::Engine : Judge {
    using Judge::Judge;
};

Session::Session(const Aircraft& aircraft, const Flow& flow, SessionSetup setup)
    : m_engine(std::make_unique<Engine>(aircraft, flow, std::move(setup))) {}
Session::~Session() = default;
Session::Session(Session&&) noexcept = default;
Session& Session::operator=(Session&&) noexcept = default;

void Session::take(Time time, std::span<const Sample> batch) {
    m_engine->take(time, batch);
}
void Session::advance(Time time) {
    m_engine->advance(time);
}
Time Session::nextTimer() const {
    return m_engine->nextTimer();
}
bool Session::isOfLever(const Sample& sample) const {
    return m_engine->isOfLever(sample);
}
bool Session::isNews(const Sample& sample) const {
    return m_engine->isNews(sample);
}
void Session::start(Time time) {
    m_engine->start(time);
}
void Session::waive(Time time) {
    m_engine->waive(time);
}
void Session::hold(Time time, const Phrase& reason) {
    m_engine->hold(time, reason);
}
void Session::gap(Time time, const Phrase& reason) {
    m_engine->gap(time, reason);
}
void Session::resume(Time time) {
    m_engine->resume(time);
}
void Session::repeat(Time time) {
    m_engine->repeat(time);
}
void Session::jump(Time time, const std::string& step) {
    m_engine->jump(time, step);
}
void Session::place(Time time, const std::string& where) {
    m_engine->place(time, where);
}
void Session::stop(Time time) {
    m_engine->stop(time);
}
void Session::unobserved(Time time, const std::string& names) {
    m_engine->unobserved(time, names);
}
void Session::carryOn(Time time) {
    m_engine->carryOn(time);
}
void Session::happen(Time time, const std::string& id) {
    m_engine->happen(time, id);
}
std::vector<Event> Session::takeEvents() {
    return m_engine->takeEvents();
}
std::vector<PartnerMove> Session::takePartnerMoves() {
    return m_engine->takePartnerMoves();
}
SessionPhase Session::phase() const {
    return m_engine->phase();
}
SessionView Session::view() const {
    return m_engine->view();
}
Score Session::score() const {
    return m_engine->score();
}
const std::vector<StepResult>& Session::results() const {
    return m_engine->results();
}
const std::vector<Value>& Session::values() const {
    return m_engine->values();
}

} // namespace flowhand
