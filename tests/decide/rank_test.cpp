// Ranking: shares that add up, derivatives against differences of lvb_compute_budget, and help that comes true.
#include "decide/rich_chain.hpp"
#include "door/refusal.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <set>

namespace {

using namespace proof;

struct Ranked {
    lvb_ranking ranking = sized<lvb_ranking>();
    std::vector<lvb_contribution> lines;
    lvb_fault fault = sized<lvb_fault>();

    explicit Ranked(Chain &chain) {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        lines.resize(chain.stages.size());
        EXPECT_EQ(lvb_compute_ranking(&chain.link, &ranking, lines.data(), sizeof(lvb_contribution), &fault), LVB_OK)
            << text_of(fault);
        auto alone = sized<lvb_ranking>();
        EXPECT_EQ(lvb_compute_ranking(&chain.link, &alone, nullptr, 0, nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&alone, &ranking, sizeof alone), 0);
    }
};

TEST(Rank, SharesAndRanksAreThoseOfTheBudget) {
    Random random(66);
    for (int i = 0; i < 1500; ++i) {
        RichChain rich(random);
        Chain &chain = rich.chain;
        const Ranked r(chain);
        const lvb_ranking &all = r.ranking;
        const std::size_t n = chain.stages.size();
        const lvb_budget &b = chain.budget;
        EXPECT_EQ(all.decided_by, b.decided_by);
        EXPECT_TRUE(same(all.decided_by_db, b.decided_by_db));
        EXPECT_NEAR(chain.stages[0].level_dbm + all.gain_db - all.loss_db, b.far_end.level_dbm, 1e-9);
        double losses = 0.0, variances = 0.0, worsts = 0.0;
        std::set<std::uint32_t> ranks[3];
        for (std::size_t k = 0; k < n; ++k) {
            const lvb_contribution &c = r.lines[k];
            EXPECT_EQ(c.far_change_db, chain.levels[k].far_change_db);
            EXPECT_EQ(c.near_change_db, chain.levels[k].near_change_db);
            EXPECT_EQ(c.basis, chain.levels[k].basis);
            losses += c.loss_share;
            variances += c.variance_share;
            worsts += c.worst_share;
            ranks[0].insert(c.loss_rank);
            ranks[1].insert(c.variance_rank);
            ranks[2].insert(c.help_rank);
            for (std::size_t j = 0; j < n; ++j) {
                const lvb_contribution &d = r.lines[j];
                if (c.loss_share > d.loss_share) {
                    EXPECT_LT(c.loss_rank, d.loss_rank);
                }
                if (chain.stages[k].tolerance_db > chain.stages[j].tolerance_db) {
                    EXPECT_LT(c.variance_rank, d.variance_rank);
                }
                if (c.help_db > d.help_db || (c.help_db == d.help_db && k < j)) {
                    EXPECT_LT(c.help_rank, d.help_rank);
                }
            }
            const auto index = static_cast<std::int32_t>(k);
            if (index == all.loss_stage) {
                EXPECT_EQ(c.loss_rank, 1u);
            }
            if (index == all.variance_stage) {
                EXPECT_EQ(c.variance_rank, 1u);
            }
            if (index == all.help_stage) {
                EXPECT_EQ(c.help_rank, 1u);
                EXPECT_EQ(c.help_db, all.help_db);
            }
        }
        for (const auto &set : ranks) { // each from 1 to n once
            EXPECT_EQ(set.size(), n);
            EXPECT_EQ(*set.begin(), 1u);
            EXPECT_EQ(*set.rbegin(), n);
        }
        EXPECT_NEAR(losses, all.loss_db > 0.0 ? 1.0 : 0.0, 1e-12);
        EXPECT_NEAR(variances, b.far_end.worst_db > 0.0 ? 1.0 : 0.0, 1e-12);
        EXPECT_NEAR(worsts, b.far_end.worst_db > 0.0 ? 1.0 : 0.0, 1e-12);
    }
}

// ---- Derivatives, against differences of whole budgets.

struct Ends {
    double far, near;
};
Ends levels(Chain &chain) {
    EXPECT_EQ(chain.compute(), LVB_OK) << text_of(chain.fault);
    return {chain.budget.far_end.level_dbm, chain.budget.near_end.level_dbm};
}
// The level's difference over a member from x - h to x + h, per unit; false where a side is refused.
bool difference(Chain &chain, double &member, double h, Ends &out) {
    const double x = member;
    member = x - h;
    const double low = member;
    const bool low_is_good = chain.compute() == LVB_OK;
    const Ends below = {chain.budget.far_end.level_dbm, chain.budget.near_end.level_dbm};
    member = x + h;
    const double width = member - low;
    const bool good = chain.compute() == LVB_OK && low_is_good;
    out = {(chain.budget.far_end.level_dbm - below.far) / width,
           (chain.budget.near_end.level_dbm - below.near) / width};
    member = x;
    return good;
}
void expect_slope(double told, double found, double tolerance, const char *what) {
    EXPECT_NEAR(told, found, tolerance * std::max(1.0, std::fabs(found))) << what;
}

TEST(Rank, DerivativesAreDifferencesOfTheBudget) {
    Random random(67);
    int counts[9] = {};
    for (int i = 0; i < 1500; ++i) {
        RichChain rich(random);
        Chain &chain = rich.chain;
        const Ranked r(chain);
        const lvb_ranking &all = r.ranking;
        const bool near = all.decided_by == LVB_DECIDED_BY_NEAR_CEILING;
        Ends d{};
        // the link's fields: with the steps that the header states a budget's difference is the sum of the stages', but
        // for the rounding of the levels
        lvb_link &link = chain.link;
        if (difference(chain, link.frequency_mhz, link.frequency_mhz / 8192.0, d)) {
            ++counts[0];
            double far = 0.0, sum_near = 0.0;
            for (const lvb_contribution &c : r.lines) far += c.far_db_per_mhz, sum_near += c.near_db_per_mhz;
            expect_slope(far, d.far, 1e-11, "far by frequency");
            expect_slope(sum_near, d.near, 1e-11, "near by frequency");
            expect_slope(all.db_per_mhz, near ? d.near : d.far, 1e-11, "by frequency");
        }
        const lvb_link kept = link;
        if (link.stated == 0) link.temperature_degc = 20.0;
        link.stated = LVB_STATED_TEMPERATURE;
        if (difference(chain, link.temperature_degc, 1.0 / 64.0, d)) {
            ++counts[1];
            expect_slope(all.db_per_degc, near ? d.near : d.far, 1e-10, "by temperature");
        }
        link = kept;
        for (std::size_t k = 0; k < chain.stages.size(); ++k) {
            lvb_stage &s = chain.stages[k];
            const lvb_contribution &c = r.lines[k];
            if (s.kind == LVB_KIND_AIR) {
                if (link.near_distance_m == 0.0) link.near_distance_m = link.far_distance_m;
                // far beyond near, so that each has room; the derivative is that of the far distance as it was
                const double far_m = link.far_distance_m, near_m = link.near_distance_m;
                link.near_distance_m = far_m / 2.0;
                if (difference(chain, link.far_distance_m, far_m / 8192.0, d)) {
                    ++counts[2];
                    expect_slope(c.far_db_per_distance_m, d.far, 1e-10, "by far distance");
                }
                link.near_distance_m = near_m;
                link.far_distance_m = near_m * 2.0;
                if (difference(chain, link.near_distance_m, near_m / 8192.0, d)) {
                    ++counts[3];
                    expect_slope(c.near_db_per_distance_m, d.near, 1e-10, "by near distance");
                }
                link = kept;
            }
            const bool computed = s.cable_type != 0 || s.cable_table != nullptr;
            const bool gain_is_free =
                s.gain_table == nullptr && s.pattern == nullptr && s.body_table == nullptr && !computed;
            if (s.kind == LVB_KIND_SOURCE) {
                ASSERT_TRUE(difference(chain, s.level_dbm, 0.25, d));
                expect_slope(c.db_per_db, d.far, 1e-11, "by level");
                expect_slope(c.db_per_db, d.near, 1e-11, "by level");
            } else if (gain_is_free) {
                EXPECT_EQ(c.db_per_db, 1.0);
                if (difference(chain, s.gain_db, 0.25, d)) {
                    ++counts[4];
                    expect_slope(1.0, d.far, 1e-11, "by gain");
                    expect_slope(s.kind == LVB_KIND_ALLOWANCE ? 0.0 : 1.0, d.near, 1e-11, "by gain");
                }
            } else {
                EXPECT_TRUE(std::isnan(c.db_per_db));
            }
            EXPECT_EQ(std::isnan(c.db_per_m), !computed);
            if (computed) {
                ++counts[5];
                ASSERT_TRUE(difference(chain, s.length_m, s.length_m / 4.0, d));
                expect_slope(c.db_per_m, d.far, 1e-10 / s.length_m, "by length");
                EXPECT_EQ(c.db_per_connector_db, -static_cast<double>(s.connector_count));
                const Ends before = levels(chain);
                s.connector_count += 1;
                EXPECT_NEAR(c.db_per_connector, levels(chain).far - before.far, 1e-10);
                s.connector_count -= 1;
                if (s.connector_count != 0 && s.connector_loss_db != 0.0 &&
                    difference(chain, s.connector_loss_db, s.connector_loss_db / 2.0, d))
                    expect_slope(c.db_per_connector_db, d.far, 1e-9, "by the loss of connectors");
            }
            EXPECT_EQ(std::isnan(c.far_db_per_azimuth_deg), s.pattern == nullptr);
            if (s.pattern != nullptr) {
                ++counts[6];
                ASSERT_TRUE(difference(chain, s.far_azimuth_deg, 1.0 / 64.0, d));
                expect_slope(c.far_db_per_azimuth_deg, d.far, 1e-9, "by far azimuth");
                ASSERT_TRUE(difference(chain, s.near_azimuth_deg, 1.0 / 64.0, d));
                expect_slope(c.near_db_per_azimuth_deg, d.near, 1e-9, "by near azimuth");
                ASSERT_TRUE(difference(chain, s.far_elevation_deg, 1.0 / 64.0, d));
                expect_slope(c.far_db_per_elevation_deg, d.far, 1e-9, "by far elevation");
                ASSERT_TRUE(difference(chain, s.near_elevation_deg, 1.0 / 64.0, d));
                expect_slope(c.near_db_per_elevation_deg, d.near, 1e-9, "by near elevation");
            }
            EXPECT_EQ(std::isnan(c.db_per_facing_deg), s.body_table == nullptr);
            if (s.body_table != nullptr) {
                ++counts[7];
                ASSERT_TRUE(difference(chain, s.facing_deg, 1.0 / 64.0, d));
                expect_slope(c.db_per_facing_deg, d.far, 1e-9, "by facing");
            }
        }
        if (HasFailure()) return;
    }
    for (int k = 0; k < 8; ++k) EXPECT_GT(counts[k], 100) << k;
}

// Free space falls by 20 / (ln(10) x) dB per unit of distance and of frequency: the derivative of ITU-R P.525.
TEST(Rank, TheDifferenceOfFreeSpaceIsItsDerivative) {
    for (const double d : {0.5, 3.0, 40.0, 1e6}) {
        Chain chain({source(10.0), antenna(), air(), antenna()}, 600.0, d, d / 2.0);
        const Ranked r(chain);
        const double far = -20.0 / (std::log(10.0) * d), mhz = -20.0 / (std::log(10.0) * 600.0);
        EXPECT_NEAR(r.lines[2].far_db_per_distance_m / far, 1.0, 1e-8);
        EXPECT_NEAR(r.lines[2].near_db_per_distance_m / (2.0 * far), 1.0, 1e-8);
        EXPECT_NEAR(r.lines[2].far_db_per_mhz / mhz, 1.0, 1e-8);
        EXPECT_NEAR(r.ranking.db_per_mhz / mhz, 1.0, 1e-8);
        EXPECT_EQ(r.ranking.db_per_degc, 0.0);
    }
}

TEST(Rank, AtTheEndsOfARangeOneSideStandsForBoth) {
    Lent lent;
    Chain chain({source(10.0), stage(LVB_KIND_PASSIVE), receiver(-90.0, 30.0)});
    chain.stages[1].gain_table = lent.gain({500.0, 600.0, 700.0}, {-1.0, -2.0, -6.0});
    for (const auto &[mhz, slope] : {std::pair{500.0, -0.01}, std::pair{700.0, -0.04}, std::pair{600.0, -0.025}}) {
        chain.link.frequency_mhz = mhz;
        EXPECT_NEAR(Ranked(chain).lines[1].far_db_per_mhz, slope, 1e-12);
    }
    chain.stages[1].gain_table = lent.gain({600.0}, {-2.0});
    chain.link.frequency_mhz = 600.0;
    const Ranked alone(chain);
    EXPECT_TRUE(std::isnan(alone.lines[1].far_db_per_mhz));
    EXPECT_TRUE(std::isnan(alone.ranking.db_per_mhz));
}

// ---- Help: the change that is told is made, and the room that decides grows by that much.

TEST(Rank, HelpComesTrue) {
    Random random(68);
    const double twice = 10.0 * std::log10(2.0);
    int far_decides = 0, near_decides = 0;
    for (int i = 0; i < 3000; ++i) {
        RichChain rich(random);
        Chain &chain = rich.chain;
        const Ranked r(chain);
        const bool near = r.ranking.decided_by == LVB_DECIDED_BY_NEAR_CEILING;
        const double before = near ? -chain.budget.near_end.level_dbm : chain.budget.far_end.level_dbm;
        const lvb_link link = chain.link;
        for (std::size_t k = 0; k < chain.stages.size(); ++k) {
            lvb_stage &s = chain.stages[k];
            const lvb_stage kept = s;
            if (s.gain_table != nullptr || s.pattern != nullptr || s.body_table != nullptr || s.connector_count != 0)
                continue;
            switch (s.kind) {
            case LVB_KIND_SOURCE:
                s.level_dbm += near ? -twice : twice;
                break;
            case LVB_KIND_AMPLIFIER:
            case LVB_KIND_ANTENNA:
                s.gain_db += near ? -twice : twice;
                break;
            case LVB_KIND_PASSIVE:
            case LVB_KIND_CABLE:
            case LVB_KIND_ALLOWANCE:
                s.gain_db *= near ? 2.0 : 0.5;
                s.length_m *= near ? 2.0 : 0.5;
                break;
            case LVB_KIND_AIR:
                if (near) {
                    if (chain.link.near_distance_m == 0.0) chain.link.near_distance_m = chain.link.far_distance_m;
                    chain.link.near_distance_m = std::min(2.0 * chain.link.near_distance_m, chain.link.far_distance_m);
                } else {
                    chain.link.far_distance_m /= 2.0;
                    chain.link.near_distance_m = 0.0;
                }
                break;
            default:
                break;
            }
            if (chain.compute() == LVB_OK) {
                const double after = near ? -chain.budget.near_end.level_dbm : chain.budget.far_end.level_dbm;
                EXPECT_NEAR(r.lines[k].help_db, after - before, 1e-10) << k << ' ' << s.kind;
                ++(near ? near_decides : far_decides);
            }
            s = kept;
            chain.link = link;
        }
    }
    EXPECT_GT(far_decides, 3000);
    EXPECT_GT(near_decides, 500);
}

TEST(Rank, AWalkIsHalvedAsFarAsItsPathReaches) {
    Way way = indoor(); // ITU-R P.1238: from 1 m on
    Chain chain({source(10.0), antenna(), air(), antenna(), receiver(-90.0, 100.0)}, 900.0, 1.5);
    chain.stages[2].path = way.lent();
    EXPECT_NEAR(Ranked(chain).lines[2].help_db, way.at(900.0, 1.5) - way.at(900.0, 1.0), 1e-9);
    // near the ceiling the walk stays twice as far away, but not beyond its far distance
    Chain near({source(10.0), antenna(), air(), antenna(), receiver(-290.0 + 60.0, -60.0)}, 900.0, 4.0, 3.0);
    EXPECT_NEAR(Ranked(near).lines[2].help_db, lvb_free_space_loss_db(900.0, 4.0) - lvb_free_space_loss_db(900.0, 3.0),
                1e-12);
}

TEST(Rank, TellsWhatToMeasureAndWhatToLookUpNext) {
    Random random(69);
    int measured = 0, looked_up = 0;
    for (int i = 0; i < 2000; ++i) {
        RichChain rich(random);
        Chain &chain = rich.chain;
        const Ranked r(chain);
        const lvb_ranking &all = r.ranking;
        const bool near = all.decided_by == LVB_DECIDED_BY_NEAR_CEILING;
        const lvb_end before = near ? chain.budget.near_end : chain.budget.far_end;
        double largest = 0.0, largest_change = 0.0;
        for (std::size_t k = 0; k < chain.stages.size(); ++k) {
            const bool guess = r.lines[k].basis <= LVB_BASIS_ESTIMATE;
            if (!guess) continue;
            const lvb_stage &s = chain.stages[k];
            if (!(near && s.kind == LVB_KIND_ALLOWANCE)) largest = std::max(largest, s.tolerance_db);
            const double change = r.lines[k].far_change_db - (s.kind == LVB_KIND_SOURCE ? s.level_dbm : 0.0);
            if (s.tolerance_db == 0.0) largest_change = std::max(largest_change, std::fabs(change));
        }
        EXPECT_EQ(all.measure_worst_db, largest);
        EXPECT_EQ(std::fabs(all.look_up_change_db), largest_change);
        if (all.look_up_stage >= 0) {
            ++looked_up;
            EXPECT_EQ(chain.stages[static_cast<std::size_t>(all.look_up_stage)].tolerance_db, 0.0);
        }
        if (all.measure_stage < 0) {
            EXPECT_EQ(largest, 0.0);
            EXPECT_EQ(all.measure_rss_db, 0.0);
            continue;
        }
        ++measured;
        chain.stages[static_cast<std::size_t>(all.measure_stage)].tolerance_db = 0.0;
        ASSERT_EQ(chain.compute(), LVB_OK);
        const lvb_end after = near ? chain.budget.near_end : chain.budget.far_end;
        EXPECT_NEAR(all.measure_worst_db, before.worst_db - after.worst_db, 1e-12);
        EXPECT_NEAR(all.measure_rss_db, before.rss_db - after.rss_db, 1e-7); // a root near 0 keeps half the digits
    }
    EXPECT_GT(measured, 1000);
    EXPECT_GT(looked_up, 300);
}

TEST(Rank, InANullHasNoNumberWhereThereIsNone) {
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_COSINE;
    pattern.gain_dbi = 8.0;
    Chain chain(ordinary());
    chain.stages[3].gain_db = 0.0;
    chain.stages[3].pattern = &pattern;
    chain.stages[3].far_azimuth_deg = 180.0;
    const Ranked r(chain);
    EXPECT_EQ(r.lines[3].far_change_db, -std::numeric_limits<double>::infinity());
    EXPECT_EQ(r.lines[3].loss_rank, 1u);
    EXPECT_TRUE(std::isnan(r.lines[3].loss_share));
    EXPECT_TRUE(std::isnan(r.lines[3].far_db_per_azimuth_deg));
    EXPECT_TRUE(std::isnan(r.ranking.db_per_mhz));
    EXPECT_EQ(r.ranking.loss_stage, 3);
}

} // namespace
