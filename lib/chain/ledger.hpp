// The main job: stages entered in order, levels after each, and the verdict at both ends of the walk.
//
// Valid input only: the chain starts with its source, antennas stand on both sides of the air, the receiver ends it.
#pragma once

#include "antenna/pattern.hpp"
#include "body/facing.hpp"
#include "cable/attenuation.hpp"
#include "chain/gain_table.hpp"
#include "path/path.hpp"

#include <cstddef>
#include <cstdint>

namespace lvb::chain {

enum class Kind : std::int32_t { source = 1, passive, cable, amplifier, antenna, air, allowance, receiver };
enum class Basis : std::int32_t { not_looked_up, estimate, handbook, data_sheet, measured, formula };
inline constexpr std::size_t bases = 6;
enum class Reference : std::int32_t { conducted = 1, eirp, isotropic };
enum class Zone : std::int32_t { not_judged, dropout, low, wanted, high, overload };
enum class Verdict : std::int32_t { not_judged, holds, doubtful, drops_out, overloads, drops_out_and_overloads };
enum class Decision : std::int32_t { nothing, far_floor, near_ceiling };

/// What all stages have in common. Distances are used by air only.
struct Conditions {
    double frequency_mhz;
    double far_distance_m;
    double near_distance_m;
    bool near_is_given; ///< otherwise the near distance is the far one
    double temperature_degc;
};

/// The receiver's window; what is not stated does not judge.
struct Window {
    bool has_floor, has_wanted, has_ceiling;
    double floor_dbm, wanted_low_dbm, wanted_high_dbm, ceiling_dbm;
};

struct Stage {
    Kind kind;
    Basis basis;
    double level_dbm;     ///< source only
    double gain_db;       ///< signed; the whole effect but for what air and a computed cable add
    GainTable gain_table; ///< in place of gain_db where it has rows
    double tolerance_db;
    bool has_cable; ///< a cable whose loss is computed from `cable`
    cable::Run cable;
    Window window; ///< receiver only

    bool has_pattern; ///< an antenna whose gain is that of `pattern` in the direction of each end
    antenna::Pattern pattern;
    antenna::Direction far_direction, near_direction;
    bool has_body; ///< an allowance whose loss is that of `body`
    body::Table body;
    double facing_deg;
    bool has_path; ///< air only: another way than free space
    path::Path path;
    // For the noise book; NaN where not stated. Intercept (third-order) and compression (1 dB) at the output, a
    // receiver's at its input.
    double noise_figure_db, intercept_dbm, compression_dbm;
};

/// A level as the one right after the air plus what has come since: what follows the air is then the same at every
/// distance, and a grid of many distances adds it once.
struct Sum {
    double base = 0.0;
    double since = 0.0;

    void add(double change_db) noexcept { since += change_db; }
    void cross_air(double gain_db, double loss_db) noexcept {
        base = (level() + gain_db) - loss_db;
        since = 0.0;
    }
    double level() const noexcept { return base + since; }
};

/// One end of the walk while the chain is summed.
struct Tally {
    Sum sum;
    double change_db;
    double level_dbm;
    double worst_db;
    double squares_db2;
    double rss_db() const noexcept;
};

/// What a reader of a line, or of the whole result, should know.
struct Notes {
    bool extrapolated = false, near_field = false, near_not_given = false, null = false;

    void add(const Notes &more) noexcept {
        extrapolated = extrapolated || more.extrapolated;
        near_field = near_field || more.near_field;
        near_not_given = near_not_given || more.near_not_given;
        null = null || more.null;
    }
};

struct Line {
    Reference reference;
    Basis basis;
    Notes notes;
    Tally far_end;
    Tally near_end;
};

struct End {
    double distance_m, level_dbm, worst_db, rss_db, margin_db, headroom_db, from_middle_db;
    Zone zone, zone_lowest, zone_highest;
};

struct Entries {
    std::uint32_t by_basis[bases];
    std::uint32_t guesses_without_tolerance;
    double guess_worst_db;
};

struct Result {
    Verdict verdict;
    Decision decided_by;
    Reference reference;
    Notes notes;
    Entries entries;
    double decided_by_db, eirp_dbm, eirp_worst_db;
    End far_end, near_end;
    double path_standard_deviation_db; ///< NaN where none is stated
};

/// What a stage changes by itself at each end, at one frequency: all but the way through the air. For the source that
/// includes its level; an allowance is taken at the far end only; a pattern's null is -infinity.
struct Change {
    double far_db, near_db;
    bool extrapolated;
};
Change own_change(const Stage &stage, double frequency_mhz, double temperature_degc) noexcept;

/// Whether own_change is the same at every frequency.
bool is_flat(const Stage &stage) noexcept;

/// Keeps the book of one chain: enter each stage in order, then close.
class Ledger {
  public:
    explicit Ledger(const Conditions &conditions) noexcept;
    const Line &enter(const Stage &stage) noexcept;
    Result close() const noexcept;

  private:
    void cross_air(const Stage &stage, double gain_db) noexcept;
    void count(const Stage &stage) noexcept;

    Conditions conditions_;
    Line line_;
    Window window_{};
    Entries entries_{};
    Notes notes_;
    bool has_air_ = false;
    double eirp_dbm_, eirp_worst_db_, path_standard_deviation_db_;
};

/// Where a level lies in a window.
Zone zone_of(const Window &window, double level_dbm) noexcept;

/// The limit that leaves least room, of the far end's margin and the near end's headroom. One that is not stated is
/// NaN, which no comparison prefers.
struct Decided {
    Decision by;
    double room_db;
};
Decided decided_of(const Window &window, double margin_db, double headroom_db) noexcept;

/// The verdict over both ends, from their margin, headroom and worst case.
Verdict verdict_of(const Window &window, const End &far_end, const End &near_end) noexcept;

} // namespace lvb::chain
