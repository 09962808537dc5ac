#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <utility>

#include "store/store.h"

namespace flowhand {

/// The stored runs as the window asks for them. What is asked is done piece after piece in its order, away from the
/// window, which never waits for the disk. Functions of the GUI thread.
class RunShelf {
public:
    virtual ~RunShelf() = default;

    /// `work` must not touch the window's objects. Its result, or why the store could not be opened, comes to `answer`
    /// on the GUI thread; never, once the shelf is gone.
    template <class T>
    void ask(std::function<Result<T>(Store&)> work, std::function<void(Result<T>)> answer) {
        auto result = std::make_shared<std::optional<Result<T>>>();
        post(
            [work = std::move(work), result](Result<Store>& store) {
                result->emplace(store ? work(*store) : Result<T>(tl::unexpected(store.error())));
            },
            [answer = std::move(answer), result] {
                answer(std::move(**result));
            });
    }

protected:
    using Work = std::function<void(Result<Store>&)>;
    virtual void post(Work work, std::function<void()> then) = 0;
};

} // namespace flowhand
