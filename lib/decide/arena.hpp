// Pieces of the caller's working room. Without memory the same calls measure how much is needed.
#pragma once

#include <cstddef>
#include <cstdint>

namespace lvb::decide {

class Arena {
  public:
    static constexpr std::size_t alignment = 16;

    Arena() noexcept = default; ///< measures
    Arena(void *memory, std::uint64_t bytes) noexcept : begin_(static_cast<char *>(memory)), size_(bytes) {
        taken_ = (alignment - reinterpret_cast<std::uintptr_t>(memory) % alignment) % alignment;
    }

    /// The next `count` elements, not initialized; null while measuring.
    template <class T>
    T *take(std::uint64_t count) noexcept {
        static_assert(alignof(T) <= alignment);
        const std::uint64_t at = taken_;
        taken_ += (count * sizeof(T) + (alignment - 1)) / alignment * alignment;
        return begin_ == nullptr ? nullptr : reinterpret_cast<T *>(begin_ + at);
    }
    /// Bytes taken, with room to align memory that begins anywhere.
    std::uint64_t needed() const noexcept { return taken_ + (alignment - 1); }
    std::uint64_t left() const noexcept { return taken_ < size_ ? size_ - taken_ : 0; }

  private:
    char *begin_ = nullptr;
    std::uint64_t size_ = 0, taken_ = 0;
};

} // namespace lvb::decide
