#pragma once

#include <cstddef>
#include <type_traits>
#include <vector>

namespace flowhand {

/// A queue with both ends open in one piece of memory, which grows by doubling and is kept when it empties.
template <class T>
class Ring {
    static_assert(std::is_trivially_copyable_v<T>);

public:
    [[nodiscard]] bool isEmpty() const { return m_size == 0; }
    [[nodiscard]] std::size_t size() const { return m_size; }
    [[nodiscard]] T& front() { return m_items[m_first]; }
    [[nodiscard]] const T& front() const { return m_items[m_first]; }
    [[nodiscard]] T& back() { return (*this)[m_size - 1]; }
    [[nodiscard]] const T& back() const { return (*this)[m_size - 1]; }
    [[nodiscard]] T& operator[](std::size_t i) { return m_items[(m_first + i) & (m_items.size() - 1)]; }
    [[nodiscard]] const T& operator[](std::size_t i) const { return m_items[(m_first + i) & (m_items.size() - 1)]; }

    void pushBack(const T& item) {
        if (m_size == m_items.size())
            grow();
        ++m_size;
        back() = item;
    }
    void popFront() {
        m_first = (m_first + 1) & (m_items.size() - 1);
        --m_size;
    }
    void popBack() { --m_size; }
    void clear() { m_first = m_size = 0; }

private:
    void grow() {
        std::vector<T> larger(m_items.empty() ? 4 : 2 * m_items.size());
        for (std::size_t i = 0; i < m_size; ++i)
            larger[i] = (*this)[i];
        m_items.swap(larger);
        m_first = 0;
    }

    std::vector<T> m_items; // its size is 0 or a power of two
    std::size_t m_first = 0;
    std::size_t m_size = 0;
};

} // namespace flowhand
