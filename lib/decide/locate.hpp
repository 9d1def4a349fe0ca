// Which stage of a chain has a fault, by levels measured at some of its points.
//
// Every stage departs from what was entered by a normal deviation of its own, readings err normally, and at most one
// stage has a fault besides: a normal one of a broad spread, a loss as likely as a gain. Along the chain the departure
// of the level is then a random walk, seen at the readings, and a fault is a jump of it.
//
// Source: smoothing by two filters, Fraser & Potter (1969); jumps of a linear system, Willsky & Jones (1976).
#pragma once

#include <cstdint>

namespace lvb::decide {

inline constexpr std::uint32_t most_readings = 64;

/// A level measured after a stage, less the level that the entered values predict there.
struct Reading {
    std::uint32_t stage;
    double excess_db;
    double variance_db2; ///< of its error, above 0
};

/// What is held of the chain before anything is measured.
struct Prior {
    std::uint32_t stages;
    const double *walk_db2;    ///< after each stage: variance of the departure, never falling
    double fault_probability;  ///< that some stage has a fault, each as likely as any other
    double fault_variance_db2; ///< of its size around 0
};

/// A departure as the readings of one side tell it, and the share of an earlier estimate that the last of them left.
struct Estimate {
    double departure_db, variance_db2, share_left;
};

/// The stages between two neighbouring readings, first to end - 1; none between two readings at one point.
struct Span {
    std::uint32_t first, end;
    Estimate before;     ///< by the readings before the span, where it begins
    Estimate behind;     ///< by the readings from its end on, there; of infinite variance where there is none
    double probability;  ///< of each of its stages to have the fault
    double fault_db;     ///< if one of them has it: its size, as estimated
    double variance_db2; ///< of that estimate
    /// Of the readings before the span and of those from its end on, each side by itself: with a fault of whatever size
    /// in the span nothing ties them together. Behind the last reading of all, that of a chain without a fault.
    double chi_square;
};

/// What the readings tell.
class Findings {
  public:
    /// Sorts the readings, at most most_readings of them.
    Findings(const Prior &prior, Reading *readings, std::uint32_t count) noexcept;

    std::uint32_t spans() const noexcept { return spans_; }
    const Span &span(std::uint32_t i) const noexcept { return span_[i]; }
    /// Degrees of freedom of its chi_square: the size of the fault is taken from the readings where they see it.
    std::uint32_t degrees(std::uint32_t i) const noexcept { return i + 1 == spans_ ? spans_ - 1 : spans_ - 2; }
    double none_probability() const noexcept { return none_; } ///< that no stage has a fault
    double chi_square() const noexcept { return chi_square_; } ///< without a fault, with a degree of freedom a reading

    /// Bits that one more reading, after a stage of span i, is expected to tell of which stage has the fault, from
    /// below. Source: Lindley (1956); the bound by pairs, Kolchinsky & Tracey, Entropy 19, 361 (2017).
    double expected_bits(std::uint32_t i, std::uint32_t stage, double variance_db2) const noexcept;

  private:
    void pass_forwards(const Reading *readings) noexcept;
    void pass_backwards(const Reading *readings) noexcept;
    void weigh() noexcept;
    double walk_db2(std::uint32_t stages) const noexcept { return stages == 0 ? 0.0 : prior_.walk_db2[stages - 1]; }

    Prior prior_;
    std::uint32_t spans_;
    double none_, chi_square_ = 0.0;
    Span span_[most_readings + 1];
};

/// Probability that chi-square of so many degrees of freedom, up to 200, is at least this large.
double chi_square_above(std::uint32_t degrees, double chi_square) noexcept;

} // namespace lvb::decide
