// How well faults are found, in chains whose truth is drawn here: the figures that the README states, printed.
//
// Chains: half of them conducted (source, cables, pads and amplifiers, receiver), half over the air with two antennas
// and an allowance; 6 to 16 stages (8 to 16 over the air, which leaves four points to measure), each with a tolerance
// of 0.5 dB. True deviations: uniform within plus and minus 0.5 dB, or normal with a standard deviation of 0.5 /
// sqrt(3) dB. Meter: errors of a standard deviation of 0.3 dB, uniform within plus and minus 0.3 sqrt(3) dB, or normal;
// told to the search as 0.3 dB. Faults: 3 to 20 dB uniformly, three of four a loss, in a stage that is as likely as any
// other. Common practice, no source: what a chain, a meter and a fault may be.
#include "decide/search.hpp"
#include "units/random.hpp"

#include <cmath>
#include <cstdio>
#include <set>

namespace {

using namespace proof;

constexpr int chains = 10000;
constexpr double tolerance_db = 0.5, meter_db = 0.3, fault_least_db = 3.0, fault_most_db = 20.0;

enum class Law { uniform, normal };
const char *name(Law law) { return law == Law::uniform ? "uniform" : "normal"; }

class Draw {
  public:
    Draw(std::uint64_t seed, Law law) : random_(seed), law_(law) {}

    Random &random() { return random_; }
    /// Of a standard deviation, around 0.
    double error(double standard_deviation_db) {
        const double limit_db = standard_deviation_db * std::sqrt(3.0);
        if (law_ == Law::uniform) return random_.uniform(-limit_db, limit_db);
        // Box and Muller
        const double radius = std::sqrt(-2.0 * std::log(1.0 - random_.uniform(0.0, 1.0)));
        return standard_deviation_db * radius * std::cos(2.0 * M_PI * random_.uniform(0.0, 1.0));
    }
    double fault_db(double least_db, double most_db) {
        const double size = random_.uniform(least_db, most_db);
        return random_.below(4) ? -size : size;
    }

  private:
    Random random_;
    Law law_;
};

/// A chain as it really is: by how much the level after each stage departs from the predicted one.
struct World {
    Search search;
    std::vector<bool> point; // whether one can measure after the stage
    std::uint32_t culprit = 0;
    double fault_db = 0.0;
    std::vector<double> departure_db;

    World(Draw &draw, bool over_air)
        : World(draw, over_air,
                static_cast<std::uint32_t>(over_air ? 8 + draw.random().below(9) : 6 + draw.random().below(11))) {}
    World(Draw &draw, bool over_air, std::uint32_t count) : search(stages(draw.random(), over_air, count), meter_db) {
        for (std::uint32_t i = 0; i < count; ++i)
            point.push_back(search.chain.levels[i].reference == LVB_REFERENCE_CONDUCTED);
        double sum_db = 0.0;
        for (std::uint32_t i = 0; i < count; ++i)
            departure_db.push_back(sum_db += draw.error(tolerance_db / std::sqrt(3.0)));
    }
    void break_one(Draw &draw, double least_db, double most_db) {
        culprit = static_cast<std::uint32_t>(draw.random().below(departure_db.size()));
        fault_db = draw.fault_db(least_db, most_db);
        for (std::size_t i = culprit; i < departure_db.size(); ++i) departure_db[i] += fault_db;
    }
    void measure(Draw &draw, std::uint32_t stage) { search.read({stage, departure_db[stage] + draw.error(meter_db)}); }
    /// At the end of the chain and at other points of their own, chosen at random.
    void measure_some(Draw &draw, std::size_t count) {
        std::set<std::uint32_t> chosen = {search.stage_count() - 1};
        while (chosen.size() < count) {
            const auto stage = static_cast<std::uint32_t>(draw.random().below(search.stage_count()));
            if (point[stage]) chosen.insert(stage);
        }
        for (const std::uint32_t stage : chosen) measure(draw, stage);
        EXPECT_EQ(search.run(), LVB_OK);
    }
    /// The span on top, above no fault too, holds the culprit.
    bool culprit_is_on_top() const {
        const lvb_locate_result &result = search.result;
        return result.span_first <= culprit && culprit <= result.span_last &&
               result.span_probability > result.none_probability;
    }
    /// The span on top has no point to measure but at its end.
    bool is_narrow() const {
        for (std::uint32_t i = search.result.span_first; i < search.result.span_last; ++i)
            if (point[i]) return false;
        return true;
    }

  private:
    static std::vector<lvb_stage> stages(Random &random, bool over_air, std::uint32_t count) {
        std::vector<lvb_stage> made = {source(15.0)};
        const std::uint64_t air_at = over_air ? 1 + random.below(count - 5) : count; // antenna, air, allowance, antenna
        while (made.size() + 1 < count) {
            if (made.size() == air_at) {
                for (const lvb_stage &in : {antenna(6.0), air(), stage(LVB_KIND_ALLOWANCE, -20.0), antenna()})
                    made.push_back(in);
                continue;
            }
            const std::uint64_t kind = random.below(3);
            if (kind == 0) made.push_back(cable(LVB_CABLE_RG_213_U, random.uniform(1.0, 40.0)));
            if (kind == 1) made.push_back(stage(LVB_KIND_PASSIVE, random.uniform(-10.0, 0.0)));
            if (kind == 2) made.push_back(stage(LVB_KIND_AMPLIFIER, random.uniform(0.0, 20.0)));
        }
        made.push_back(receiver(-100.0, 20.0));
        for (lvb_stage &in : made) in.tolerance_db = tolerance_db;
        return made;
    }
};

double percent(int count) { return 100.0 * count / chains; }

class Locate : public testing::TestWithParam<Law> {};

TEST_P(Locate, FourReadingsFindTheSpanOfAFault) {
    for (const bool least : {false, true}) {
        Draw draw(1, GetParam());
        int found = 0, alarms = 0, within = 0, contradictions = 0;
        for (int i = 0; i < chains; ++i) {
            World world(draw, i % 2 != 0);
            world.break_one(draw, fault_least_db, least ? fault_least_db : fault_most_db);
            world.measure_some(draw, 4);
            found += world.culprit_is_on_top();
            alarms += world.search.result.consistent == 0;
            contradictions += world.search.result.fault_p_value < 0.01;
            const lvb_suspect &suspect = world.search.suspects[world.culprit];
            within += std::fabs(suspect.fault_db - world.fault_db) <= 2.0 * suspect.standard_deviation_db;
        }
        std::printf(
            "%s, faults %s: the fault's span is on top in %.2f %%, called inconsistent %.2f %%, fault within two "
            "deviations %.2f %%, called contradictory %.2f %%\n",
            name(GetParam()), least ? "of 3 dB" : "from 3 dB on", percent(found), percent(alarms), percent(within),
            percent(contradictions));
        // One fault explains the readings that it made, but for 1 % of them by the normal law; and four deviations of
        // that count, of chains that are drawn.
        EXPECT_LE(percent(contradictions), 1.0 + 400.0 * std::sqrt(0.01 * 0.99 / chains));
        if (!least) {
            EXPECT_GE(percent(found), 97.0);
            EXPECT_GE(percent(within), 94.5); // of a normal distribution 95.45 % lie there
        }
    }
}

TEST_P(Locate, AHealthyChainRaisesFewAlarms) {
    for (const double level : {0.0, 0.05, 0.2}) { // 0: 0.01
        Draw draw(2, GetParam());
        int alarms = 0;
        for (int i = 0; i < chains; ++i) {
            World world(draw, i % 2 != 0);
            world.search.request.false_alarm = level;
            world.measure_some(draw, 4);
            alarms += world.search.result.consistent == 0;
        }
        const double stated = level == 0.0 ? 0.01 : level;
        const double three_deviations = 300.0 * std::sqrt(stated * (1.0 - stated) / chains);
        std::printf("%s, healthy: alarms %.2f %% at a stated level of %g %%\n", name(GetParam()), percent(alarms),
                    100.0 * stated);
        EXPECT_LE(level == 0.0 ? percent(alarms) : 0.0, 5.0);
        EXPECT_LE(percent(alarms), 100.0 * stated + three_deviations);
        if (GetParam() == Law::normal) {
            EXPECT_GE(percent(alarms), 100.0 * stated - three_deviations);
        }
    }
}

TEST_P(Locate, TheAdviceIsolatesAFaultInFewReadings) {
    for (const bool over_air : {false, true}) {
        Draw draw(3, GetParam());
        int isolated = 0;
        long readings = 0;
        for (int i = 0; i < chains; ++i) {
            World world(draw, over_air);
            world.break_one(draw, fault_least_db, fault_most_db);
            double points = 0.0;
            for (const bool point : world.point) points += point;
            const int most = static_cast<int>(std::ceil(std::log2(points))) + 1;
            ASSERT_EQ(world.search.run(), LVB_OK);
            const auto is_sure = [&] { return world.is_narrow() && world.search.result.span_probability > 0.9; };
            for (int k = 0; k < most && !is_sure(); ++k) {
                world.measure(draw, world.search.result.next_stage);
                ASSERT_EQ(world.search.run(), LVB_OK);
                ++readings;
            }
            isolated += world.is_narrow() && world.culprit_is_on_top();
        }
        std::printf(
            "%s, %s: the advice isolates the fault within ceil(log2 n) + 1 readings in %.2f %%, %.2f readings in "
            "the mean\n",
            name(GetParam()), over_air ? "over the air" : "conducted", percent(isolated),
            static_cast<double>(readings) / chains);
        EXPECT_GE(percent(isolated), 95.0);
    }
}

INSTANTIATE_TEST_SUITE_P(Draws, Locate, testing::Values(Law::uniform, Law::normal),
                         [](const auto &chosen) { return std::string(name(chosen.param)); });

} // namespace
