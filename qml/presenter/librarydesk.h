#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <utility>

#include "command/textcheck.h"

namespace flowhand {

/// Where the files of the library are read and checked: away from the window, piece after piece in their order.
/// Functions of the GUI thread.
class LibraryDesk {
public:
    virtual ~LibraryDesk() = default;

    /// `work` must not touch the window's objects. Its result comes to `answer` on the GUI thread; never, once the desk
    /// is gone.
    template <class T>
    void ask(std::function<T(TextCheck&)> work, std::function<void(T)> answer) {
        auto result = std::make_shared<std::optional<T>>();
        post(
            [work = std::move(work), result](TextCheck& check) {
                result->emplace(work(check));
            },
            [answer = std::move(answer), result] {
                answer(std::move(**result));
            });
    }

protected:
    using Work = std::function<void(TextCheck&)>;
    virtual void post(Work work, std::function<void()> then) = 0;
};

} // namespace flowhand
