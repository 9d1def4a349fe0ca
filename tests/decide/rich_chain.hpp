// Valid chains made at random with everything that a stage may lend: tables, patterns, bodies, paths.
#pragma once

#include "chain/random_chain.hpp"
#include "path/paths.hpp"
#include "support/solving.hpp"

#include <cmath>
#include <limits>

namespace proof {

using support::link_field, support::stage_field;

/// A chain that keeps what its stages borrow; it stays where it is made.
struct RichChain {
    Lent lent;
    Chain chain{{}};
    Way way;
    std::deque<lvb_pattern> patterns;
    std::deque<lvb_body_table> bodies;
    std::vector<double> facing_deg = {-120.0, -30.0, 60.0, 150.0}, loss_db = {3.0, 12.0, 6.0, 25.0};

    RichChain(const RichChain &) = delete;
    /// `flat` chains have no gain tables and a steady path.
    explicit RichChain(Random &random, bool flat = false) {
        do {
            lent = {};
            patterns.clear();
            bodies.clear();
            chain = ChainMaker(random, lent, Lending::tables).make();
            for (lvb_stage &stage : chain.stages) {
                if (flat && stage.gain_table != nullptr) {
                    stage.gain_table = nullptr;
                    stage.gain_db = -random.uniform(0.1, 3.0);
                    if (stage.kind == LVB_KIND_SOURCE) stage.gain_db = 0.0;
                }
                if (stage.kind == LVB_KIND_ANTENNA && random.below(2)) lend_pattern(random, stage);
                if (stage.kind == LVB_KIND_ALLOWANCE && random.below(3) == 0) lend_body(random, stage);
                if (stage.kind == LVB_KIND_AIR && random.below(2)) lend_path(random, stage, flat);
            }
            bare_feed(chain.stages);
        } while (chain.compute() != LVB_OK); // outside the reach of a path
    }

  private:
    void lend_pattern(Random &random, lvb_stage &stage) {
        auto pattern = sized<lvb_pattern>();
        pattern.kind = static_cast<std::int32_t>(random.below(2)) + 1;
        if (pattern.kind == LVB_PATTERN_COSINE) {
            pattern.gain_dbi = random.uniform(4.0, 14.0);
            pattern.front_to_back_db = random.uniform(5.0, 30.0);
        }
        stage.gain_db = 0.0;
        stage.gain_table = nullptr;
        stage.pattern = &patterns.emplace_back(pattern);
        stage.far_azimuth_deg = random.uniform(-100.0, 100.0);
        stage.near_azimuth_deg = random.uniform(-100.0, 100.0);
        stage.far_elevation_deg = random.uniform(-40.0, 40.0);
        stage.near_elevation_deg = random.uniform(-40.0, 40.0);
    }
    void lend_body(Random &random, lvb_stage &stage) {
        auto table = sized<lvb_body_table>();
        table.row_count = 4;
        table.facing_deg = facing_deg.data();
        table.loss_db = loss_db.data();
        stage.gain_db = 0.0;
        stage.gain_table = nullptr;
        stage.body_table = &bodies.emplace_back(table);
        stage.facing_deg = random.uniform(-350.0, 350.0);
    }
    void lend_path(Random &random, lvb_stage &stage, bool flat) {
        do way = random_way(random);
        while (flat && (way.path.model == LVB_PATH_TWO_RAY || !way.edges.empty()));
        stage.path = way.lent();
        chain.link.frequency_mhz = random.uniform(300.0, 850.0);
        chain.link.far_distance_m = random.uniform(5.0, 100.0);
        chain.link.near_distance_m = random.below(2) ? random.uniform(2.0, 5.0) : 0.0;
    }
};

} // namespace proof
