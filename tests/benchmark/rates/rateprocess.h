#pragma once

#include <functional>
#include <string>
#include <sys/types.h>

#include "measured.h"

/// A process of its own that reads devices until it is ended, and writes what it measured. No threads may run when it
/// is started.
class RateProcess {
public:
    using Read = std::function<Measured(bool (*isOver)())>;

    /// `read` runs in the new process; its result goes to `file`.
    RateProcess(const std::string& file, const Read& read);
    /// Ends it, and waits until `file` is written.
    ~RateProcess();
    RateProcess(const RateProcess&) = delete;
    RateProcess& operator=(const RateProcess&) = delete;

    /// The system gives it no time until goOn().
    void stand() const;
    void goOn() const;

private:
    pid_t m_process = 0;
};
