#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "base/error.h"
#include "bench/workbench.h"

namespace flowhand {

/// A rig on the bench as the window uses it. Functions of the GUI thread; the bench itself is on a thread of its own.
class BenchHandle {
public:
    virtual ~BenchHandle() = default;
    [[nodiscard]] virtual BenchSnapshot snapshot() const = 0;
    /// What the watched control did since the last call.
    [[nodiscard]] virtual std::vector<BenchPoint> takeTrace() = 0;
    virtual void watch(SignalId signal) = 0;
    virtual void begin(const BenchWish& wish) = 0;
    /// Goes on to the next control of a walk, ends the measurement, or answers a question with yes.
    virtual void next() = 0;
    virtual void cancel() = 0;
    /// Errors: those of saveCheckSheet(), `unwritable-file`.
    [[nodiscard]] virtual Status writeSheet(const std::string& file) = 0;
    /// Of the first seat's steps, or of both.
    [[nodiscard]] virtual Status writeCoverage(const std::string& file, bool hasBothSeats) = 0;
    /// Shows a page that was written, in whatever this desktop shows pages with. Error `not-shown`.
    [[nodiscard]] virtual Status showPage(const std::string& file) = 0;
    /// Fixed for the bench; outlive it.
    [[nodiscard]] virtual const Aircraft& aircraft() const = 0;
    [[nodiscard]] virtual const std::vector<const Flow*>& flows() const = 0;
};

/// Puts rigs on the bench: the real ones, or a test's. GUI thread.
class BenchMaker {
public:
    virtual ~BenchMaker() = default;
    /// The rig that would be opened; an empty title when there is none yet: then a new one is begun.
    [[nodiscard]] virtual QString rigTitle() const = 0;
    [[nodiscard]] virtual QString rigFile() const = 0;
    /// `onChange` is called from any thread.
    [[nodiscard]] virtual Result<std::unique_ptr<BenchHandle>> open(std::function<void()> onChange) = 0;
    /// The same with this aircraft, and without its flows: to see where the rig's controls stand.
    [[nodiscard]] virtual Result<std::unique_ptr<BenchHandle>> openFor(std::shared_ptr<const Aircraft> aircraft,
                                                                       std::function<void()> onChange) = 0;
};

} // namespace flowhand
