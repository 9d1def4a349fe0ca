// Noise and linearity along the receive side of a chain: Friis's cascade, third-order intercepts, compression.
//
// Noise temperatures and intercepts are kept in dB: the gains of long chains neither overflow nor vanish. What a stage
// does not state is NaN, and stays NaN in every sum that needs it.
#pragma once

#include "chain/ledger.hpp"
#include "math/constants.hpp"

namespace lvb::chain {

/// A stage as the cascade takes it.
struct Part {
    double gain_db;
    double noise_db; ///< noise temperature at its input over T0; -infinity for none
    double bend_db;  ///< 1 / third-order intercept at its input, per mW; -infinity where it does not bend
};

/// A stage's part; change_db is its own_change. A receiver is referred to its input, and allowances do nothing.
Part part_of(const Stage &stage, double change_db, double temperature_degc) noexcept;

/// Parts in order, with noise and intercept at the input of the first.
struct Cascade {
    double gain_db = 0.0;
    double noise_db = -math::infinity;
    double bend_db = -math::infinity;

    void add(const Part &part) noexcept;
};

enum class Place : std::int32_t { none, antenna, receiver };

/// A level in the bandwidth, where there is one.
struct Measured {
    Place at;
    double level_dbm;
};

struct NoiseConditions {
    double bandwidth_mhz;
    double antenna_db; ///< antenna's noise temperature over T0
    Measured noise;    ///< in place of the computed one
    Measured interference;
    bool has_needed;
    double needed_db;       ///< carrier to noise
    std::uint32_t carriers; ///< whose products are counted
    double together_db;     ///< their power together over one of them; 0 where one carrier is judged
};

struct NoiseNotes {
    bool no_noise_figure = false, no_intercept = false, no_compression = false, range_lowered = false;
};

/// Third-order products of carriers at one level and an intercept at the same place.
struct Products {
    double two_tone_dbm, all_dbm;
};

struct NoiseLine {
    NoiseNotes notes;
    double gain_db, stage_figure_db, figure_db, temperature_k, noise_dbm, far_carrier_to_noise_db,
        near_carrier_to_noise_db, input_intercept_dbm, output_intercept_dbm, compression_dbm, headroom_db;
    Products products;
    double range_change_db, carrier_to_noise_change_db; ///< amplifiers; otherwise NaN
};

/// At the receiver's input or at the antenna's terminal, as the names say.
struct NoiseResult {
    Verdict verdict;
    std::int32_t no_noise_figure_stage, no_intercept_stage, compressing_stage, range_lowering_stage;
    double gain_db, figure_db, temperature_k, antenna_temperature_k, antenna_noise_dbm, receiver_noise_dbm,
        receiver_interference_dbm;
    double far_level_dbm, near_level_dbm, far_carrier_to_noise_db, near_carrier_to_noise_db, far_carrier_to_both_db,
        near_carrier_to_both_db; ///< both: noise and interference
    double sensitivity_dbm, margin_db, input_intercept_dbm, output_intercept_dbm, compression_dbm, headroom_db;
    Products products;
    double spurious_free_range_db;
};

/// Keeps the noise book of one receive side: enter each stage after the antenna (or source) with its index and what the
/// ledger made of it, then close.
class NoiseBook {
  public:
    /// The parts of all stages that will be entered, and the ledger's line of the antenna (or source).
    NoiseBook(const NoiseConditions &conditions, const Part *parts, std::uint32_t count, const Line &antenna) noexcept;
    const NoiseLine &enter(const Stage &stage, std::int32_t index, const Line &entered) noexcept;
    NoiseResult close() const noexcept;

  private:
    void note_missing(const Stage &stage, std::int32_t index) noexcept;
    void enter_compression(const Stage &stage, std::int32_t index, double gain_before_db) noexcept;
    void compare_without(std::uint32_t part, std::int32_t index) noexcept;
    Products products(double intercept_dbm, double level_dbm) const noexcept;

    NoiseConditions conditions_;
    const Part *parts_;
    std::uint32_t count_, entered_ = 0;
    double floor_dbm_, all_products_db_; ///< k T0 B; all products over a single one
    Tally far_start_, near_start_;       ///< at the antenna's terminal
    Tally far_end_, near_end_;           ///< at the receiver's input, or so far
    Cascade whole_, so_far_;
    NoiseLine line_{};
    double compression_dbm_ = math::not_a_number, largest_cost_db_ = 0.0;
    std::int32_t no_noise_figure_ = -1, no_intercept_ = -1, compressing_ = -1, range_lowering_ = -1;
};

} // namespace lvb::chain
