// The library's answer for a link.
#pragma once

#include "lend.hpp"

namespace desk {

/// A limit of power where a link that may be tuned comes nearest to it, or is furthest beyond.
struct TunedLimit {
    std::int32_t verdict = 0; ///< LVB_LIMIT_, the worst of all frequencies
    double room_db = 0.0;
    double frequency_mhz = 0.0; ///< where that is met first
};

/// What an antenna's pattern gives towards the other antenna.
struct PatternGains {
    lvb_pattern_gain far{};
    lvb_pattern_gain near{};
    double far_azimuth_deg = 0.0;
    double far_elevation_deg = 0.0;
    double near_azimuth_deg = 0.0;
    double near_elevation_deg = 0.0;
};

/// What the path through the air costs at both ends of the walk.
struct PathLosses {
    lvb_path_loss far{};
    lvb_path_loss near{};
};

/// How often the far end's level falls below the floor, and what room would do.
struct Fade {
    double margin_db = 0.0; ///< the far end's, above the floor
    double outage = 0.0;    ///< that follows from it, 0 to 1
    double needed_db = 0.0; ///< the margin for the outage that is wanted
};

struct NoiseBook {
    lvb_noise noise{};
    std::vector<lvb_noise_line> lines;
};

/// How a link stands over the frequencies that it may be tuned to.
struct Tuned {
    lvb_sweep_result sweep{};
    std::vector<TunedLimit> limits; ///< of each limit of the link
};

struct Computed {
    lvb_budget budget{};
    std::vector<lvb_level> levels;
    std::optional<Sights> sights;                      ///< where the antennas have places
    std::vector<std::optional<PatternGains>> patterns; ///< of each stage
    std::optional<PathLosses> path;
    std::optional<NoiseBook> noise;
    std::optional<Fade> fade;
    std::vector<lvb_limit_result> limits; ///< of each limit of the link
    std::optional<Tuned> tuned;           ///< where the link may be tuned
};

/// How far people must keep away from the transmit antenna.
struct KeepAway {
    double limit_w_per_m2 = 0.0;
    double eirp_dbm = 0.0;        ///< of all transmitters on the antenna, with every tolerance upwards
    double distance_m = 0.0;      ///< as the far field has it
    double keep_distance_m = 0.0; ///< that, or a wavelength where it lies nearer and the far field does not hold
    bool near_field() const { return keep_distance_m > distance_m; }
};

/// A link of a scenario with what the library says of it.
struct Answer {
    const Link *link;
    Computed computed;
    std::optional<KeepAway> keep_away; ///< where the link asks for it
};

/// What a transmitter does to the receiver beside it.
struct Coexistence {
    lvb_neighbours neighbours{}; ///< as the library took them
    lvb_coexistence result{};
};

/// Two systems side by side with what the library says of them.
struct Pair {
    const Neighbours *neighbours;
    const Link *transmitter;
    const Link *receiver;
    Coexistence coexistence;
};

/// A document's scenario, each link with the level that its noise asks for; throws Refusal at the first thing that is
/// wrong, but not at what is wrong with a link's noise: that is told when the link is asked for.
Scenario open_scenario(const Document &document);

/// The least level in the receiver's window that the link's own noise, interference and the needed carrier to noise
/// allow; none where no floor or no needed carrier to noise is given, or the noise is not known. Throws Refusal.
std::optional<double> needed_level(const Document &document, const Link &link);

/// Computes a link with all that it asks for; throws Refusal.
Answer answer_link(const Document &document, const Link &link);

/// Computes a link; throws Refusal at the line and key that the library does not accept.
Computed compute(const Document &document, const Link &link);

/// Both answers hold computed links; throws Refusal.
Coexistence compute(const Document &document, const Neighbours &pair, const Answer &transmitter,
                    const Answer &receiver);

/// A link as the library borrows it, with what the places of its antennas tell; throws Refusal.
std::unique_ptr<Lent> lend(const Document &document, const Link &link);

/// What a computed cable consists of. Only for a stage that has a cable type or table, in a link that was computed.
lvb_cable_loss cable_loss(double frequency_mhz, std::optional<double> temperature_degc, const Stage &stage);

/// Whether a stage's cable is computed from a type or a table.
bool is_computed_cable(const Stage &stage);

} // namespace desk
