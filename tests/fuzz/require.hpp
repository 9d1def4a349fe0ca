// What must hold for every input, checked inside the fuzz targets.
#pragma once

#include <levelbook/levelbook.h>

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <string>
#include <vector>

/// Ends the program with the place and the condition, so that a fuzzer keeps the input.
#define REQUIRE(condition)                                                                                             \
    ((condition) ? void()                                                                                              \
                 : (std::fprintf(stderr, "%s:%d: does not hold: %s\n", __FILE__, __LINE__, #condition), std::abort()))

namespace fuzz {

inline bool is_nan(double x) { return x != x; }
inline bool known(const char *name) { return std::strcmp(name, "unknown") != 0; }

/// A struct of the header, or none; the closed lvb_end too.
inline bool known_structure(std::int32_t structure) {
    return structure == LVB_STRUCT_NONE || lvb_struct_size(structure) != 0;
}

/// Memory of exactly some bytes, so that a sanitizer sees the first byte beyond, filled with a pattern.
class Memory {
  public:
    explicit Memory(std::size_t size) : bytes_(new unsigned char[size]), size_(size) {
        std::memset(bytes_.get(), pattern, size);
    }
    template <class T>
    T *as() {
        return reinterpret_cast<T *>(bytes_.get());
    }
    /// Writes a value at the beginning, as far as there is room.
    template <class T>
    void put(const T &value, std::size_t at = 0) {
        if (at < size_) std::memcpy(bytes_.get() + at, &value, sizeof value < size_ - at ? sizeof value : size_ - at);
    }
    template <class T>
    T get(std::size_t at = 0) const {
        T value{};
        std::memcpy(&value, bytes_.get() + at, sizeof value);
        return value;
    }
    void zero_from(std::size_t at) {
        if (at < size_) std::memset(bytes_.get() + at, 0, size_ - at);
    }
    bool is_zero_from(std::size_t at) const {
        for (; at < size_; ++at)
            if (bytes_[at] != 0) return false;
        return true;
    }
    std::size_t size() const { return size_; }
    std::vector<unsigned char> copy() const { return {bytes_.get(), bytes_.get() + size_}; }

  private:
    static constexpr int pattern = 0xA5;
    std::unique_ptr<unsigned char[]> bytes_;
    std::size_t size_;
};

/// A struct for a result with a declared size: the memory has just that size (but always room for `size` itself, and
/// never more than the library may take for a struct).
template <class T>
Memory result(std::uint32_t size) {
    constexpr std::uint32_t largest = 4096;
    const std::size_t room = size > largest ? sizeof(T) : size < sizeof size ? sizeof size : size;
    Memory memory(room);
    memory.put(size);
    return memory;
}

/// The text of a fault: one sentence that fits, and the same however little room it gets.
inline void require_sentence(const lvb_fault &fault, std::size_t little_room) {
    char text[256];
    const std::size_t length = lvb_fault_text(&fault, text, sizeof text);
    REQUIRE(length > 1 && length < sizeof text);
    REQUIRE(std::strlen(text) == length);
    REQUIRE(text[length - 1] == '.');
    REQUIRE(std::strstr(text, "unknown.") == nullptr);
    REQUIRE(lvb_fault_text(&fault, nullptr, 17) == length);
    const std::unique_ptr<char[]> little(new char[little_room]);
    REQUIRE(lvb_fault_text(&fault, little.get(), little_room) == length);
    if (little_room == 0) return;
    const std::size_t written = length < little_room ? length : little_room - 1;
    REQUIRE(std::string(little.get()) == std::string(text, written));
}

/// A fault tells what the call returned, and its numbers agree with its status.
inline void require_fault(const lvb_fault &fault, lvb_status status, std::size_t little_room) {
    REQUIRE(fault.status == status);
    REQUIRE(known(lvb_field_name(fault.field)) || fault.field == LVB_FIELD_NONE);
    REQUIRE(known_structure(fault.structure));
    REQUIRE(fault.stage >= LVB_STAGE_LINK && fault.stage < LVB_MAX_STAGES);
    REQUIRE(fault.row >= -1 && fault.row < LVB_MAX_ROWS);
    if (status == LVB_OK) REQUIRE(fault.field == LVB_FIELD_NONE && is_nan(fault.value));
    if (status == LVB_E_NAN) REQUIRE(is_nan(fault.value));
    if (status == LVB_E_INFINITE) REQUIRE(fault.value - fault.value != 0.0);
    if (status == LVB_E_BELOW_RANGE) REQUIRE(fault.value < fault.minimum);
    if (status == LVB_E_ABOVE_RANGE) REQUIRE(fault.value > fault.maximum);
    if (status == LVB_E_OUTSIDE_TABLE) REQUIRE(fault.value < fault.minimum || fault.value > fault.maximum);
    if (status == LVB_E_MISSING) REQUIRE(fault.value == 0.0);
    require_sentence(fault, little_room);
}

/// The fault of one call: none, one of this or a later size, or one that the library must refuse.
class Fault {
  public:
    template <class Source>
    explicit Fault(Source &bytes)
        : given_(!bytes.once_in(8)), size_(bytes.size_of(sizeof(lvb_fault))), little_room_(bytes.byte()),
          memory_(result<lvb_fault>(size_)), before_(memory_.copy()) {}

    lvb_fault *pointer() { return given_ ? memory_.as<lvb_fault>() : nullptr; }
    bool usable() const { return !given_ || (size_ >= sizeof(lvb_fault) && size_ <= 4096); }

    void require(lvb_status status) const {
        REQUIRE(status <= 0 && known(lvb_status_name(status)));
        if (!usable()) REQUIRE(status == LVB_E_STRUCT_SIZE);
        if (!given_ || !usable()) {
            REQUIRE(memory_.copy() == before_);
            return;
        }
        const auto told = memory_.get<lvb_fault>();
        REQUIRE(told.size == size_ && memory_.is_zero_from(sizeof(lvb_fault)));
        require_fault(told, status, little_room_);
    }

  private:
    bool given_;
    std::uint32_t size_;
    std::size_t little_room_;
    Memory memory_;
    std::vector<unsigned char> before_;
};

} // namespace fuzz
