#include "rateprocess.h"

#include <atomic>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

namespace {

std::atomic<bool> g_isOver = false;

bool isOver() {
    return g_isOver;
}

} // namespace

RateProcess::RateProcess(const std::string& file, const Read& read) : m_process(fork()) {
    if (m_process < 0)
        std::abort();
    if (m_process > 0)
        return;
    std::signal(SIGTERM, [](int) {
        g_isOver = true;
    });
    const Measured measured = read(isOver);
    std::ofstream out(file);
    measured.write(out);
    out.close();
    std::_Exit(0);
}

RateProcess::~RateProcess() {
    kill(m_process, SIGTERM);
    waitpid(m_process, nullptr, 0);
}

void RateProcess::stand() const {
    kill(m_process, SIGSTOP);
}

void RateProcess::goOn() const {
    kill(m_process, SIGCONT);
}
