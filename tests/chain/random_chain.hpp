// Valid chains made at random, with every kind of stage, tables, patterns, bodies, paths, tolerances and bases.
#pragma once

#include "chain/chains.hpp"
#include "path/paths.hpp"
#include "units/random.hpp"

#include <deque>

namespace proof {

/// What stages borrow; a deque, so that they stay where they are.
struct Lent {
    std::deque<std::vector<double>> columns;
    std::deque<lvb_gain_table> gains;
    std::deque<lvb_cable_table> cables;
    std::deque<lvb_azimuth_cut> cuts;
    std::deque<lvb_pattern> patterns;
    std::deque<lvb_body_table> bodies;
    std::deque<Way> ways;

    const lvb_gain_table *gain(std::vector<double> mhz, std::vector<double> db) {
        auto table = sized<lvb_gain_table>();
        table.row_count = static_cast<std::uint32_t>(mhz.size());
        table.frequency_mhz = columns.emplace_back(std::move(mhz)).data();
        table.gain_db = columns.emplace_back(std::move(db)).data();
        return &gains.emplace_back(table);
    }
    const lvb_cable_table *cable(std::vector<double> mhz, std::vector<double> db) {
        auto table = sized<lvb_cable_table>();
        table.row_count = static_cast<std::uint32_t>(mhz.size());
        table.frequency_mhz = columns.emplace_back(std::move(mhz)).data();
        table.attenuation_db_per_100m = columns.emplace_back(std::move(db)).data();
        return &cables.emplace_back(table);
    }
    /// Without a direction in which nothing at all is radiated, but for the dipole's axis.
    const lvb_pattern *pattern(Random &random) {
        auto made = sized<lvb_pattern>();
        made.kind = static_cast<std::int32_t>(random.below(5));
        if (made.kind == LVB_PATTERN_COSINE) made.gain_dbi = random.uniform(3.1, 15.0);
        if (made.kind == LVB_PATTERN_HELIX) {
            made.turns = random.uniform(4.0, 12.0);
            made.spacing_wavelengths = 0.24;
            made.circumference_wavelengths = random.uniform(0.8, 1.2);
        }
        if (made.kind == LVB_PATTERN_CUTS) {
            auto cut = sized<lvb_azimuth_cut>();
            cut.row_count = 3;
            cut.azimuth_deg = columns.emplace_back(std::vector<double>{-100.0, 0.0, 120.0}).data();
            cut.gain_db = columns.emplace_back(std::vector<double>{-10.0, random.uniform(-3.0, 0.0), -14.0}).data();
            made.azimuth_cut = &cuts.emplace_back(cut);
            made.gain_dbi = random.uniform(-3.0, 9.0);
        }
        if (made.kind >= LVB_PATTERN_COSINE) made.front_to_back_db = random.uniform(5.0, 40.0);
        return &patterns.emplace_back(made);
    }
    const lvb_body_table *body(Random &random) {
        auto made = sized<lvb_body_table>();
        made.row_count = 3;
        made.facing_deg = columns.emplace_back(std::vector<double>{-120.0, 10.0, 140.0}).data();
        made.loss_db = columns.emplace_back(std::vector<double>{9.0, random.uniform(0.0, 5.0), 20.0}).data();
        return &bodies.emplace_back(made);
    }
    /// Of a model that holds at every frequency and distance of these chains.
    const lvb_path *path(Random &random) {
        Way way = random_way(random);
        while (way.path.model == LVB_PATH_INDOOR || way.path.model == LVB_PATH_SITE_GENERAL) way = random_way(random);
        if (way.path.model == LVB_PATH_LOG_DISTANCE) way.path.reference_distance_m = 0.01; // the nearest of all
        return ways.emplace_back(std::move(way)).lent();
    }
};

/// What ChainMaker lends: gain tables and cable tables alone, or patterns, bodies and paths too.
enum class Lending { tables, everything };

/// What feeds a radiating cable, where the chain has one, has neither gain nor pattern.
inline void bare_feed(std::vector<lvb_stage> &stages) {
    lvb_stage *feed = nullptr;
    for (lvb_stage &one : stages) {
        if (one.kind == LVB_KIND_ANTENNA && feed == nullptr) feed = &one;
        if (one.path != nullptr && one.path->model == LVB_PATH_RADIATING_CABLE)
            *feed = stage(LVB_KIND_ANTENNA, 0.0, feed->tolerance_db, feed->basis);
    }
}

class ChainMaker {
  public:
    ChainMaker(Random &random, Lent &lent, Lending lending = Lending::everything)
        : random_(random), lent_(lent), lending_(lending) {}

    Chain make() {
        std::vector<lvb_stage> stages = {dressed(LVB_KIND_SOURCE)};
        stages[0].level_dbm = random_.uniform(-60.0, 60.0);
        conducted(stages);
        const bool radiates = random_.below(5) != 0;
        if (radiates) {
            stages.push_back(dressed(LVB_KIND_ANTENNA));
            allowances(stages);
            if (random_.below(6) != 0) {
                stages.push_back(dressed(LVB_KIND_AIR));
                allowances(stages);
                stages.push_back(dressed(LVB_KIND_ANTENNA));
                conducted(stages);
                window(stages);
            }
        } else {
            window(stages);
        }
        bare_feed(stages);
        Chain chain(std::move(stages), random_.uniform(100.0, 850.0));
        if (chain.has_air()) {
            chain.link.far_distance_m = random_.log_uniform(-1.0, 4.0);
            if (random_.below(2)) chain.link.near_distance_m = chain.link.far_distance_m * random_.uniform(0.1, 1.0);
        }
        if (random_.below(2)) {
            chain.link.stated = LVB_STATED_TEMPERATURE;
            chain.link.temperature_degc = random_.uniform(-40.0, 80.0);
        }
        return chain;
    }

  private:
    static double lowest(std::int32_t kind) {
        return kind == LVB_KIND_PASSIVE || kind == LVB_KIND_ALLOWANCE || kind == LVB_KIND_CABLE || kind == LVB_KIND_AIR
                   ? -30.0
                   : -20.0;
    }
    static double highest(std::int32_t kind) {
        return kind == LVB_KIND_PASSIVE || kind == LVB_KIND_ALLOWANCE || kind == LVB_KIND_CABLE ? 0.0 : 20.0;
    }
    lvb_stage dressed(std::int32_t kind) {
        const double tolerance = random_.below(3) ? random_.uniform(0.0, 4.0) : 0.0;
        lvb_stage made = stage(kind, 0.0, tolerance, static_cast<std::int32_t>(random_.below(6)));
        const double low = lowest(kind);
        const double high = highest(kind);
        if (lending_ == Lending::everything && random_.below(3) == 0 && lend(made)) return made;
        if (random_.below(4) == 0) {
            const double second_mhz = random_.uniform(200.0, 400.0);
            made.gain_table =
                lent_.gain({100.0, second_mhz, 500.0, 850.0}, {random_.uniform(low, high), random_.uniform(low, high),
                                                               random_.uniform(low, high), random_.uniform(low, high)});
        } else if (random_.below(8) != 0 || kind == LVB_KIND_CABLE) made.gain_db = random_.uniform(low, high);
        return made;
    }
    // An antenna's pattern or an allowance's body stands in place of a gain, a path beside it.
    bool lend(lvb_stage &made) {
        switch (made.kind) {
        case LVB_KIND_ANTENNA:
            made.pattern = lent_.pattern(random_);
            made.far_azimuth_deg = random_.uniform(-360.0, 360.0);
            made.near_azimuth_deg = random_.uniform(-360.0, 360.0);
            made.far_elevation_deg = random_.uniform(-80.0, 80.0);
            made.near_elevation_deg = random_.uniform(-80.0, 80.0);
            return true;
        case LVB_KIND_ALLOWANCE:
            made.body_table = lent_.body(random_);
            made.facing_deg = random_.uniform(-360.0, 360.0);
            return true;
        case LVB_KIND_AIR:
            made.path = lent_.path(random_);
            return false;
        default:
            return false;
        }
    }
    void conducted(std::vector<lvb_stage> &stages) {
        for (std::uint64_t n = random_.below(5); n > 0; --n) switch (random_.below(6)) {
            case 0:
                stages.push_back(dressed(LVB_KIND_PASSIVE));
                break;
            case 1:
                stages.push_back(dressed(LVB_KIND_AMPLIFIER));
                break;
            case 2:
                stages.push_back(dressed(LVB_KIND_ALLOWANCE));
                break;
            case 3:
                stages.push_back(dressed(LVB_KIND_CABLE));
                break;
            default: {
                const double tolerance = random_.uniform(0.0, 2.0);
                lvb_stage made = stage(LVB_KIND_CABLE, 0.0, tolerance, static_cast<std::int32_t>(random_.below(6)));
                if (random_.below(2)) made.cable_type = LVB_CABLE_RG_213_U;
                else made.cable_table = lent_.cable({200.0, 500.0, 800.0}, {7.0, 12.0, 16.0});
                made.length_m = random_.log_uniform(-1.0, 2.0);
                made.connector_count = static_cast<std::uint32_t>(random_.below(4));
                if (made.connector_count != 0 && random_.below(2)) made.connector_loss_db = random_.uniform(0.01, 1.0);
                stages.push_back(made);
            }
            }
    }
    void allowances(std::vector<lvb_stage> &stages) {
        for (std::uint64_t n = random_.below(3); n > 0; --n) stages.push_back(dressed(LVB_KIND_ALLOWANCE));
    }
    void window(std::vector<lvb_stage> &stages) {
        if (random_.below(4) == 0) return;
        lvb_stage made = dressed(LVB_KIND_RECEIVER);
        double next = random_.uniform(-120.0, -40.0);
        const auto rising = [&] { return next += random_.uniform(0.0, 30.0); };
        if (random_.below(2)) made.stated |= LVB_STATED_FLOOR, made.floor_dbm = rising();
        if (random_.below(2))
            made.stated |= LVB_STATED_WANTED, made.wanted_low_dbm = rising(), made.wanted_high_dbm = rising();
        if (random_.below(2)) made.stated |= LVB_STATED_CEILING, made.ceiling_dbm = rising();
        stages.push_back(made);
    }

    Random &random_;
    Lent &lent_;
    Lending lending_;
};

} // namespace proof
