// A scenario as the program keeps it: what the library gets, and beside it where each number stands in the file.
#pragma once

#include "document.hpp"
#include "keys.hpp"

#include <memory>
#include <optional>

namespace desk {

/// A table of values over frequency or an angle, in the library's units.
struct Table {
    const Value *value = nullptr;         ///< the table in the scenario
    std::shared_ptr<const Document> file; ///< where its columns stand; null where that is the scenario itself
    std::vector<double> points;           ///< frequencies or angles
    std::vector<double> values;
    Given point_column;
    Given value_column;
    std::string origin; ///< where the person has it from
};

/// An object of the scenario that becomes one of the library's structs.
struct Part {
    const Value *value = nullptr;
    GivenNumbers numbers;
};

/// An antenna's gain over direction.
struct Pattern : Part {
    lvb_pattern entry{};                        ///< without its cuts
    std::shared_ptr<const Table> azimuth_cut;   ///< null where there is none
    std::shared_ptr<const Table> elevation_cut; ///< null where there is none
    std::string source;
};

/// Where an antenna stands and how it is turned.
struct Place : Part {
    lvb_antenna entry{}; ///< without its pattern
};

/// Another way through the air than free space.
struct Path : Part {
    lvb_path entry{}; ///< without its edges
    std::vector<lvb_edge> edges;
    std::vector<GivenNumbers> edge_numbers;
    bool has_heights() const { return entry.transmit_height_m != 0.0 || entry.receive_height_m != 0.0; }
};

/// What the noise of a link depends on beside its stages.
struct NoiseTerms : Part {
    lvb_noise_conditions entry{};
};

/// A limit of power: the person's own, or a published one of the library.
struct Limit : Part {
    lvb_limit entry{};
    std::string label;                  ///< of an own limit
    std::optional<lvb_limit_rule> rule; ///< the published one
};

/// What people near the transmit antenna may be exposed to.
struct Exposure : Part {
    std::int32_t rule = 0;     ///< LVB_EXPOSURE_; 0: an own limit
    std::int32_t audience = 0; ///< LVB_AUDIENCE_; 0: an own limit
    double limit_w_per_m2 = 0.0;
    double reflection_factor = 0.0;
    std::uint32_t transmitters = 1; ///< of this power on the antenna
};

/// How the level moves from place to place, and how seldom it may fall below the floor.
struct Fading : Part {
    enum class Model { rayleigh, rice, nakagami, log_normal, suzuki };
    Model model = Model::rayleigh;
    std::int32_t law() const { return static_cast<std::int32_t>(model) + LVB_FADING_RAYLEIGH; } ///< LVB_FADING_
    double parameter = 0.0; ///< k_db of Rice, shape of Nakagami, standard_deviation_db of log-normal and Suzuki
    double outage = 0.0;    ///< the largest that is wanted, 0 to 1
    double branches = 1.0;  ///< independent ones, of which the receiver takes the best
};

/// The frequencies that a link may be tuned to: a range in even steps, or a list of channels.
struct Tuning : Part {
    std::vector<double> channels_mhz; ///< empty for a range
    const Value *channels = nullptr;  ///< the list in the file; null for a range
    double first_mhz = 0.0;
    double last_mhz = 0.0;
    std::uint64_t count = 0;
};

/// What a link needs of the gear that is chosen for it.
struct Wanted : Part {
    lvb_need entry{}; ///< without its link
};

/// A level measured after a stage.
struct Reading : Part {
    lvb_reading entry{};
};

/// What was measured along a link.
struct Readings : Part {
    double uncertainty_db = 0.0; ///< standard uncertainty of a reading; 0: not given
    std::vector<Reading> list;
};

struct Stage {
    lvb_stage entry{}; ///< without its pointers, which are set when the library is called
    std::string label;
    std::string gear; ///< the gear's name; empty for a stage written in place
    std::string note;
    std::string cable_name;
    const Value *value = nullptr; ///< the stage in the file
    GivenNumbers numbers;
    std::shared_ptr<const Table> gain_table;  ///< null where there is none
    std::shared_ptr<const Table> cable_table; ///< null where there is none
    std::shared_ptr<const Table> body_table;  ///< null where there is none
    std::optional<Pattern> pattern;
    std::optional<Place> place;      ///< at both ends of the walk,
    std::optional<Place> far_place;  ///< or one at each
    std::optional<Place> near_place; ///< left out: no near end is given
    std::optional<Path> path;
    lvb_spread spread{};                   ///< the law of its tolerance
    const Value *from_stock = nullptr;     ///< the names of what may stand here; null where that is settled
    std::vector<std::uint32_t> candidates; ///< the same as rising indices into the stock
    bool placed() const { return place || far_place; }
};

/// Whether a stage is an allowance of this label.
bool is_allowance(const Stage &stage, const std::string &label);

struct Link {
    std::string name;
    std::string direction; ///< "outbound", "inbound" or empty
    std::string note;
    const Value *value = nullptr;
    double frequency_mhz = 0.0;
    double far_distance_m = 0.0;
    double near_distance_m = 0.0;
    std::optional<double> temperature_degc;
    GivenNumbers numbers;
    std::vector<Stage> stages;
    std::optional<NoiseTerms> noise;
    std::vector<Limit> limits;
    std::optional<Exposure> exposure;
    std::optional<Fading> fading;
    std::optional<Tuning> tuning;
    std::optional<Wanted> wanted;
    std::optional<Readings> readings;
    /// The least level in the receiver's window that the link's own noise and the needed carrier to noise allow; where
    /// they are not given, or cannot be computed, there is none. See open_scenario.
    std::optional<double> needed_dbm;
    /// Index of the first or second antenna, or -1.
    std::int32_t antenna(int which) const;
    const Stage *air() const; ///< null where there is none
    bool placed() const;      ///< whether its antennas have places
};

/// A transmitter of one link beside the receiver of another.
struct Neighbours : Part {
    std::string name;
    std::size_t transmitter = 0; ///< index of the link whose transmitter it is
    std::size_t receiver = 0;    ///< index of the link whose receiver it is
    lvb_neighbours entry{};      ///< what the scenario says; the links tell the rest
};

/// Points in plan, with heights where the file has them.
struct Corners {
    std::vector<double> x_m;
    std::vector<double> y_m;
    std::vector<std::optional<double>> z_m;
    std::vector<const Value *> values; ///< each in the file
};

/// Where performers are.
struct Area {
    const Value *value = nullptr;
    std::string name;
    Corners corners;
};

/// A vertical rectangle that shades.
struct Screen : Part {
    lvb_screen entry{};
    std::string label;
    const Value *ends[2] = {nullptr, nullptr};
};

/// An antenna of a site, or where one may stand.
struct SiteAntenna {
    const Value *value = nullptr;
    std::string label;
    std::size_t link = 0; ///< index of the link that is its chain
    Place place;
    std::optional<Pattern> pattern; ///< in place of what the chain's antenna has
};

/// How the antenna of a pack is turned on its wearer.
struct PackAntenna : Part {
    lvb_antenna entry{};            ///< without its pattern
    std::optional<Pattern> pattern; ///< in place of what the pack's antenna has in the chain
};

/// Which way the wearer faces, what the body costs, and how the pack's antenna is turned on it.
struct Wearer : Part {
    std::shared_ptr<const Table> body_table; ///< null where there is none
    std::optional<PackAntenna> antenna_on_pack;
    double most_polarization_loss_db = 0.0; ///< 0: no limit
    std::string in_place_of;                ///< label of the allowance that polarization was
    std::int32_t facing = 0;                ///< LVB_FACING_
    double azimuth_deg = 0.0;
    double x_m = 0.0;
    double y_m = 0.0;
    std::uint32_t antenna = 0; ///< that is faced
};

/// A way that a performer goes.
struct Walk : Part {
    std::string name;
    Corners corners;
    double speed_m_per_s = 0.0;
    double step_m = 0.0;
};

/// Where antennas may be put.
struct Placing : Part {
    std::uint32_t antennas = 1; ///< to place
    bool keeps_antennas = true; ///< whether those of the site stand beside them
    double least_headroom_db = 0.0;
    std::vector<SiteAntenna> candidates; ///< rails already spread
};

/// A stage, a hall, a field: antennas and the areas that they serve.
struct Site : Part {
    std::string name;
    std::string note;
    std::int32_t direction = 0; ///< LVB_DIRECTION_
    std::int32_t combine = 0;   ///< LVB_COMBINE_
    double pack_height_m = 0.0;
    double step_m = 0.0;
    std::optional<double> stage_front_y_m;
    std::vector<Area> areas;
    std::vector<SiteAntenna> antennas;
    std::vector<Screen> screens;
    std::optional<Path> path;     ///< in place of those of the chains
    std::optional<Wearer> wearer; ///< in place of body tables and of an allowance of the chains
    std::optional<Fading> fading;
    std::vector<Walk> walks;
    std::optional<Placing> placing;
};

/// The antennas of a site and, where some are to be placed, the candidates.
template <class Visit>
void visit_antennas(const Site &site, Visit visit) {
    for (const SiteAntenna &antenna : site.antennas) visit(antenna);
    if (!site.placing) return;
    for (const SiteAntenna &candidate : site.placing->candidates) visit(candidate);
}

/// Whether a site's wearer stands in place of a stage.
bool is_replaced(const Site &site, const Stage &stage);

/// Gear that may be chosen, with how much of it there is.
struct StockItem : Part {
    std::string name;
    Stage stage;
    std::uint64_t cost = 0; ///< in whatever unit the person counts
    std::uint32_t count = 1;
    double lowest_mhz = 0.0;  ///< 0: no such end
    double highest_mhz = 0.0; ///< 0: no such end
};

struct Scenario {
    std::string production;
    std::string note;
    std::vector<Link> links;
    std::vector<Neighbours> neighbours;
    std::vector<Site> sites;
    std::vector<StockItem> stock;
};

/// Takes a scenario out of a document; throws Refusal at the first thing that is wrong. The scenario points into the
/// document.
Scenario read_scenario(const Document &document);

} // namespace desk
