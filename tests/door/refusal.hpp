// How a refusal is checked: its status and every number of its fault, and that nothing else was written.
#pragma once

#include "chain/chains.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <set>
#include <string>

namespace proof {

inline constexpr double none = std::numeric_limits<double>::quiet_NaN(); // no such value or bound

/// What a fault should say.
struct Expected {
    lvb_status status;
    std::int32_t structure, field, stage = -1, row = -1;
    double value = none, minimum = none, maximum = none;
    std::string text = "";
};

inline std::string text_of(const lvb_fault &fault) {
    char text[256];
    const std::size_t length = lvb_fault_text(&fault, text, sizeof text);
    EXPECT_LT(length, sizeof text);
    EXPECT_EQ(std::strlen(text), length);
    return text;
}

/// Every status that a call of this process was refused with. statuses_test.cpp compares them with the header's.
inline std::set<lvb_status> &received() {
    static std::set<lvb_status> statuses;
    return statuses;
}

inline bool same(double a, double b) { return (std::isnan(a) && std::isnan(b)) || a == b; }

inline void expect_fault(const lvb_fault &fault, const Expected &expected) {
    received().insert(fault.status);
    EXPECT_STREQ(lvb_status_name(fault.status), lvb_status_name(expected.status));
    EXPECT_EQ(fault.structure, expected.structure);
    EXPECT_STREQ(lvb_field_name(fault.field), lvb_field_name(expected.field));
    EXPECT_EQ(fault.stage, expected.stage);
    EXPECT_EQ(fault.row, expected.row);
    EXPECT_TRUE(same(fault.value, expected.value)) << "value " << fault.value << ", not " << expected.value;
    EXPECT_TRUE(same(fault.minimum, expected.minimum)) << "minimum " << fault.minimum << ", not " << expected.minimum;
    EXPECT_TRUE(same(fault.maximum, expected.maximum)) << "maximum " << fault.maximum << ", not " << expected.maximum;
    const std::string text = text_of(fault);
    EXPECT_FALSE(text.empty());
    EXPECT_EQ(text.back(), '.');
    if (!expected.text.empty()) {
        EXPECT_EQ(text, expected.text);
    }
}

/// A result in memory that was filled with a pattern: a refused call must leave every byte.
template <class Struct>
class Untouched {
  public:
    Untouched() {
        std::memset(&result, 0xA5, sizeof result);
        result.size = sizeof result;
        std::memcpy(before_, &result, sizeof result);
    }
    bool holds() const { return std::memcmp(before_, &result, sizeof result) == 0; }
    Struct result;

  private:
    unsigned char before_[sizeof(Struct)];
};

/// Computes a chain that must be refused; budget and levels must stay as they were.
inline void refused(Chain &chain, const Expected &expected) {
    if (chain.link.stages == nullptr) chain.link.stages = chain.stages.data();
    if (chain.link.stage_count == 0) chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    Untouched<lvb_budget> budget;
    const std::size_t lines = std::min<std::size_t>(chain.link.stage_count, LVB_MAX_STAGES) + 1;
    std::vector<lvb_level> levels(lines);
    std::memset(levels.data(), 0x5A, lines * sizeof(lvb_level));
    const std::vector<lvb_level> before = levels;
    EXPECT_EQ(lvb_compute_budget(&chain.link, &budget.result, levels.data(), sizeof(lvb_level), &chain.fault),
              expected.status);
    EXPECT_TRUE(budget.holds());
    EXPECT_EQ(std::memcmp(before.data(), levels.data(), lines * sizeof(lvb_level)), 0);
    expect_fault(chain.fault, expected);
    // the same without a fault, and without lines
    EXPECT_EQ(lvb_compute_budget(&chain.link, &budget.result, nullptr, 0, nullptr), expected.status);
    EXPECT_TRUE(budget.holds());
}
inline void refused(Chain &&chain, const Expected &expected) { refused(chain, expected); }

} // namespace proof
