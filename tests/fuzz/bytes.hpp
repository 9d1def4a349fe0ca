// Turns the bytes of a fuzzer into values: some plausible, some hostile. Beyond their end all bytes are zero.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>

namespace fuzz {

class Bytes {
  public:
    Bytes(const std::uint8_t *data, std::size_t size) : data_(data), size_(size) {}

    bool empty() const { return at_ >= size_; }
    std::uint8_t byte() { return empty() ? std::uint8_t{0} : data_[at_++]; }
    /// True once in `n` values of a byte.
    bool once_in(unsigned n) { return byte() % n == n - 1; }
    /// 0 to n - 1.
    std::uint32_t below(std::uint32_t n) { return byte() % n; }

    template <class T>
    T raw() {
        unsigned char bytes[sizeof(T)];
        for (unsigned char &b : bytes) b = byte();
        T value;
        std::memcpy(&value, bytes, sizeof value);
        return value;
    }

    /// A value from low to high in 65536 steps.
    double between(double low, double high) { return low + (high - low) * raw<std::uint16_t>() / 65535.0; }

    /// A number that a field with this range may meet: inside, at an end, zero, or anything at all.
    double number(double low, double high) {
        switch (below(16)) {
        case 0:
            return low;
        case 1:
            return high;
        case 2:
            return any_number();
        case 3:
        case 4:
        case 5:
            return 0.0;
        default:
            return between(low, high);
        }
    }

    /// Any bit pattern, or one of those that break code.
    double any_number() {
        using limits = std::numeric_limits<double>;
        switch (below(16)) {
        case 0:
            return limits::quiet_NaN();
        case 1:
            return limits::infinity();
        case 2:
            return -limits::infinity();
        case 3:
            return limits::denorm_min();
        case 4:
            return -limits::denorm_min();
        case 5:
            return limits::max();
        case 6:
            return -limits::max();
        case 7:
            return limits::min();
        case 8:
            return -0.0;
        case 9:
            return 1.0;
        case 10:
            return between(-1000.0, 1000.0);
        default:
            return raw<double>();
        }
    }

    /// A size for a struct of `known` bytes: mostly right, else longer, or any.
    std::uint32_t size_of(std::size_t known) {
        switch (below(12)) {
        case 0:
            return raw<std::uint32_t>();
        case 1:
            return below(256);
        case 2:
        case 3:
            return static_cast<std::uint32_t>(known + below(64));
        default:
            return static_cast<std::uint32_t>(known);
        }
    }

  private:
    const std::uint8_t *data_;
    std::size_t size_;
    std::size_t at_ = 0;
};

} // namespace fuzz
