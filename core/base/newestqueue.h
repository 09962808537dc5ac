#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <mutex>
#include <unordered_map>
#include <utility>
#include <vector>

namespace flowhand {

/// What one reader hands to the session thread: items with a `time` and a key that says what they are of, and notices.
/// When `capacity` items wait, only the newest of each key is kept beside them and what it replaces is counted: the
/// last state of everything always arrives. `KeyOf` takes an item and gives its key, a hashable and ordered number.
template <class Item, class Notice, class KeyOf>
class NewestQueue {
public:
    explicit NewestQueue(std::size_t capacity) : m_capacity(capacity) {}

    /// Reader thread. Times must not go back. Whether something was ever dropped.
    bool push(const std::vector<Item>& items) {
        const std::lock_guard lock(m_mutex);
        for (const Item& item : items) {
            if (m_items.size() < m_capacity && m_newest.empty()) {
                m_items.push_back(item);
                continue;
            }
            const auto [kept, isNew] = m_newest.insert_or_assign(KeyOf{}(item), item);
            if (!isNew)
                ++m_drops;
        }
        return m_drops > 0;
    }
    void push(Notice notice) {
        const std::lock_guard lock(m_mutex);
        settle(); // after it a key may mean another thing
        m_notices.push_back(std::move(notice));
    }

    /// Session thread. Appends in the order of times.
    void drain(std::vector<Item>& items, std::vector<Notice>& notices) {
        const std::lock_guard lock(m_mutex);
        settle();
        items.insert(items.end(), m_items.begin(), m_items.end());
        notices.insert(notices.end(), std::make_move_iterator(m_notices.begin()),
                       std::make_move_iterator(m_notices.end()));
        m_items.clear();
        m_notices.clear();
    }

    /// Any thread.
    [[nodiscard]] std::uint64_t drops() const {
        const std::lock_guard lock(m_mutex);
        return m_drops;
    }

private:
    using Key = decltype(KeyOf{}(std::declval<const Item&>()));

    /// Moves the newest items to the end of the queue: one a key, so that it stays bounded.
    void settle() {
        if (m_newest.empty())
            return;
        const auto firstNew = static_cast<std::ptrdiff_t>(m_items.size());
        for (const auto& [key, item] : m_newest)
            m_items.push_back(item);
        m_newest.clear();
        std::sort(m_items.begin() + firstNew, m_items.end(), [](const Item& a, const Item& b) {
            return a.time != b.time ? a.time < b.time : KeyOf{}(a) < KeyOf{}(b);
        });
    }

    const std::size_t m_capacity;
    mutable std::mutex m_mutex; ///< guards all below
    std::vector<Item> m_items;
    std::unordered_map<Key, Item> m_newest; ///< when full
    std::vector<Notice> m_notices;
    std::uint64_t m_drops = 0;
};

} // namespace flowhand
