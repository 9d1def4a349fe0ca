// Noise and linearity of the receive side: against noise powers and product amplitudes that are added up stage by
// stage, published orders of stages, and properties.
#include "chain/random_chain.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double at_290_k = 290.0 - 273.15;

lvb_stage amplifier(double gain_db, double figure_db) {
    lvb_stage made = stage(LVB_KIND_AMPLIFIER, gain_db);
    made.stated = LVB_STATED_NOISE_FIGURE;
    made.noise_figure_db = figure_db;
    return made;
}
lvb_stage amplifier(double gain_db, double figure_db, double output_intercept_dbm) {
    lvb_stage made = amplifier(gain_db, figure_db);
    made.stated |= LVB_STATED_INTERCEPT;
    made.intercept_dbm = output_intercept_dbm;
    return made;
}
lvb_stage noisy_receiver(double figure_db) {
    lvb_stage made = receiver();
    made.stated |= LVB_STATED_NOISE_FIGURE;
    made.noise_figure_db = figure_db;
    return made;
}
lvb_stage noisy_receiver(double figure_db, double input_intercept_dbm) {
    lvb_stage made = noisy_receiver(figure_db);
    made.stated |= LVB_STATED_INTERCEPT;
    made.intercept_dbm = input_intercept_dbm;
    return made;
}
lvb_stage compressing(lvb_stage made, double compression_dbm) {
    made.stated |= LVB_STATED_COMPRESSION;
    made.compression_dbm = compression_dbm;
    return made;
}
double figure_of_kelvin(double kelvin) { return lvb_noise_figure_db_from_noise_temperature_k(kelvin); }

/// A chain with its noise book.
struct Book {
    Chain chain;
    lvb_noise_conditions conditions = sized<lvb_noise_conditions>();
    lvb_noise noise = sized<lvb_noise>();
    std::vector<lvb_noise_line> lines;

    explicit Book(Chain given, double bandwidth_mhz = 0.2) : chain(std::move(given)) {
        conditions.bandwidth_mhz = bandwidth_mhz;
    }
    /// Without air: the source's terminal is the antenna's.
    explicit Book(std::vector<lvb_stage> after_source, double bandwidth_mhz = 0.2, double level_dbm = -60.0)
        : Book(Chain(started(std::move(after_source), level_dbm)), bandwidth_mhz) {
        chain.link.stated = LVB_STATED_TEMPERATURE;
        chain.link.temperature_degc = at_290_k;
    }
    static std::vector<lvb_stage> started(std::vector<lvb_stage> stages, double level_dbm) {
        stages.insert(stages.begin(), source(level_dbm));
        return stages;
    }
    lvb_status compute() {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        lines.assign(chain.stages.size(), lvb_noise_line{});
        return lvb_compute_noise(&chain.link, &conditions, &noise, lines.data(), sizeof(lvb_noise_line), &chain.fault);
    }
    const lvb_noise &sound() {
        EXPECT_EQ(compute(), LVB_OK) << lvb_field_name(chain.fault.field) << " of stage " << chain.fault.stage;
        return noise;
    }
};

// ---- Published orders of stages. The rows of tests/reference/cascade.ref go the same way.

TEST(Order, MattersAndShows) {
    // Roddy, Satellite Communications, example 12.7, p. 319: antenna 35 K, amplifier 150 K and 50 dB, cable 5 dB,
    // receiver 12 dB: 185 K (known C).
    const lvb_stage amp = amplifier(50.0, figure_of_kelvin(150.0)), line = stage(LVB_KIND_PASSIVE, -5.0);
    Book before({amp, line, noisy_receiver(12.0)});
    before.conditions.antenna_temperature_k = 35.0;
    EXPECT_NEAR(before.sound().noise_temperature_k + 35.0, 185.0, 0.5);
    // The other order: 35 + (L - 1) 290 + L (150 + (F - 1) 290 / 1e5), by hand.
    Book after({line, amp, noisy_receiver(12.0)});
    after.conditions.antenna_temperature_k = 35.0;
    const double loss = std::pow(10.0, 0.5);
    EXPECT_NEAR(after.sound().noise_temperature_k + 35.0,
                35.0 + (loss - 1.0) * 290.0 + loss * (150.0 + (std::pow(10.0, 1.2) - 1.0) * 290.0 / 1e5), 1e-9);
    EXPECT_GT(after.noise.noise_temperature_k, 5.0 * before.noise.noise_temperature_k);
}

TEST(Order, APreamplifierCanLowerTheRange) {
    // Beasley & Miller, Modern Electronic Communication, examples 7.7 and 7.8, p. 314 (known C).
    Book alone({noisy_receiver(20.0, 5.0)}, 1.0);
    EXPECT_NEAR(alone.sound().antenna_noise_dbm, -94.0, 0.05);
    EXPECT_NEAR(alone.noise.spurious_free_range_db, 66.0, 0.05);
    EXPECT_EQ(alone.noise.range_lowering_stage, -1);
    Book with({amplifier(24.0, 5.0, 150.0), noisy_receiver(20.0, 5.0)}, 1.0);
    EXPECT_NEAR(with.sound().antenna_noise_dbm, -108.49, 0.05);
    EXPECT_NEAR(with.noise.spurious_free_range_db, 59.7, 0.05 + 0.02); // half a unit, and -174 for -173.975 dBm/Hz
    EXPECT_EQ(with.noise.range_lowering_stage, 1);
    EXPECT_EQ(with.noise.notes, static_cast<std::uint32_t>(LVB_NOTE_RANGE_LOWERED | LVB_NOTE_NO_COMPRESSION));
    EXPECT_NEAR(with.lines[1].range_change_db, 59.7 - 66.0, 0.1);
    EXPECT_NEAR(with.lines[1].carrier_to_noise_change_db, 14.5, 0.1);
}

// ---- Random chains, with every figure stated.

Chain figured(Random &random, Lent &lent) {
    Chain chain = ChainMaker(random, lent).make();
    for (lvb_stage &in : chain.stages) {
        const bool active = in.kind == LVB_KIND_AMPLIFIER || in.kind == LVB_KIND_RECEIVER;
        if (active) in.stated |= LVB_STATED_NOISE_FIGURE, in.noise_figure_db = random.uniform(0.0, 20.0);
        if (active || (in.kind == LVB_KIND_PASSIVE && random.below(2)))
            in.stated |= LVB_STATED_INTERCEPT | LVB_STATED_COMPRESSION,
                in.intercept_dbm = random.uniform(-30.0, 60.0), in.compression_dbm = random.uniform(-40.0, 40.0);
    }
    return chain;
}
bool ends_in_the_air(const Chain &chain) {
    return !chain.has_air() && std::any_of(chain.stages.begin(), chain.stages.end(),
                                           [](const lvb_stage &in) { return in.kind == LVB_KIND_ANTENNA; });
}
std::size_t first_of(const Chain &chain) {
    std::size_t first = 0;
    for (std::size_t i = 0; i < chain.stages.size(); ++i)
        if (chain.stages[i].kind == LVB_KIND_ANTENNA) first = i;
    return first;
}

template <class Check>
void with_random_books(std::uint64_t seed, int count, Check check) {
    Random random(seed);
    for (int i = 0; i < count; ++i) {
        Lent lent;
        Chain chain = figured(random, lent);
        Book book(std::move(chain), random.log_uniform(-3, 1));
        if (random.below(2)) book.conditions.antenna_temperature_k = random.log_uniform(0, 5);
        else if (random.below(2)) book.conditions.external_noise_figure_db = random.uniform(-20.0, 60.0);
        book.conditions.carriers = random.below(3) ? 2 + static_cast<std::uint32_t>(random.below(40)) : 0;
        if (random.below(2)) {
            book.conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
            book.conditions.carrier_to_noise_db = random.uniform(-10.0, 40.0);
        }
        if (ends_in_the_air(book.chain)) {
            ASSERT_EQ(book.compute(), LVB_E_NO_RECEIVE_ANTENNA);
            continue;
        }
        ASSERT_EQ(book.compute(), LVB_OK) << "chain " << i << ": " << lvb_field_name(book.chain.fault.field);
        ASSERT_EQ(book.chain.compute(), LVB_OK);
        check(book, random);
        if (testing::Test::HasFailure()) FAIL() << "chain " << i;
    }
}

/// Noise power in watts and in-phase amplitude of a product in volts over one ohm, carried from stage to stage.
struct Carried {
    long double gain = 1.0L, noise_w, amplitude = 0.0L;
};
constexpr long double boltzmann = 1.380649e-23L;
long double ratio(long double db) { return std::pow(10.0L, db / 10.0L); }
long double db(long double ratio) { return 10.0L * std::log10(ratio); }

TEST(Cascade, AgreesWithPowersAndAmplitudesAddedStageByStage) {
    with_random_books(91, 600, [](Book &book, Random &) {
        const std::size_t first = first_of(book.chain);
        const long double bandwidth = book.conditions.bandwidth_mhz * 1e6L;
        const long double kelvin = (book.chain.link.stated != 0 ? book.chain.link.temperature_degc : 20.0L) + 273.15L;
        const long double antenna_k = book.conditions.antenna_temperature_k != 0.0
                                          ? book.conditions.antenna_temperature_k
                                          : 290.0L * ratio(book.conditions.external_noise_figure_db);
        Carried at;
        at.noise_w = boltzmann * antenna_k * bandwidth;
        double near_dbm = book.chain.levels[first].near_level_dbm, far_dbm = book.chain.levels[first].far_level_dbm;
        for (std::size_t i = 0; i <= first; ++i) {
            EXPECT_TRUE(std::isnan(book.lines[i].gain_db) && std::isnan(book.lines[i].carrier_to_noise_change_db));
            EXPECT_EQ(book.lines[i].notes, 0u);
        }
        EXPECT_EQ(book.noise.first_stage, static_cast<std::int32_t>(first));
        for (std::size_t i = first + 1; i < book.chain.stages.size(); ++i) {
            const lvb_stage &in = book.chain.stages[i];
            const bool ends = in.kind == LVB_KIND_RECEIVER;
            const bool waits = ends || in.kind == LVB_KIND_ALLOWANCE;
            const long double gain = waits ? 1.0L : ratio(book.chain.levels[i].near_change_db);
            if (!ends) near_dbm = book.chain.levels[i].near_level_dbm, far_dbm = book.chain.levels[i].far_level_dbm;
            if (in.kind == LVB_KIND_PASSIVE || in.kind == LVB_KIND_CABLE)
                at.noise_w = at.noise_w * gain + boltzmann * kelvin * bandwidth * (1.0L - gain);
            else if (in.kind == LVB_KIND_AMPLIFIER || ends)
                at.noise_w = (at.noise_w + boltzmann * 290.0L * bandwidth * (ratio(in.noise_figure_db) - 1.0L)) * gain;
            at.gain *= gain;
            at.amplitude *= std::sqrt(gain);
            if ((in.stated & LVB_STATED_INTERCEPT) != 0)
                at.amplitude += std::sqrt(ratio(3.0L * near_dbm - 2.0L * in.intercept_dbm)); // in phase

            const lvb_noise_line &line = book.lines[i];
            const double tolerance = 1e-11 * static_cast<double>(i + 1);
            const auto noise_dbm = static_cast<double>(db(at.noise_w) + 30.0L);
            EXPECT_NEAR(line.gain_db, static_cast<double>(db(at.gain)), tolerance) << i;
            EXPECT_NEAR(line.noise_dbm, noise_dbm, tolerance) << i;
            const long double own_k = at.noise_w / at.gain / (boltzmann * bandwidth) - antenna_k;
            const long double scale = own_k + antenna_k; // what the subtraction above can lose
            EXPECT_NEAR(line.noise_temperature_k, static_cast<double>(own_k), static_cast<double>(1e-11L * scale)) << i;
            EXPECT_NEAR(line.noise_figure_db, lvb_noise_figure_db_from_noise_temperature_k(line.noise_temperature_k),
                        1e-11);
            EXPECT_NEAR(line.far_carrier_to_noise_db, far_dbm - noise_dbm, tolerance);
            EXPECT_NEAR(line.near_carrier_to_noise_db, near_dbm - noise_dbm, tolerance);
            if (at.amplitude == 0.0L) {
                EXPECT_EQ(line.two_tone_dbm, -infinity);
                EXPECT_EQ(line.output_intercept_dbm, infinity);
                continue;
            }
            EXPECT_NEAR(line.two_tone_dbm, static_cast<double>(2.0L * db(at.amplitude)), 10.0 * tolerance) << i;
            EXPECT_NEAR(line.input_intercept_dbm + line.gain_db, line.output_intercept_dbm, 1e-11);
            EXPECT_NEAR(lvb_third_order_intercept_dbm(near_dbm, static_cast<double>(2.0L * db(at.amplitude))),
                        line.output_intercept_dbm, 10.0 * tolerance);
            const double carriers = book.conditions.carriers == 0 ? 2.0 : book.conditions.carriers;
            const double all = lvb_middle_channel_products_dbm(near_dbm, line.output_intercept_dbm, carriers);
            if (std::isinf(all)) EXPECT_EQ(line.products_dbm, all);
            else EXPECT_NEAR(line.products_dbm, all, 1e-10);
        }
        if (first + 1 == book.chain.stages.size()) return;
        const lvb_noise_line &last = book.lines.back();
        const lvb_noise &noise = book.noise;
        EXPECT_EQ(noise.gain_db, last.gain_db);
        EXPECT_EQ(noise.noise_figure_db, last.noise_figure_db);
        EXPECT_EQ(noise.noise_temperature_k, last.noise_temperature_k);
        EXPECT_NEAR(noise.receiver_noise_dbm, last.noise_dbm, 1e-12);
        EXPECT_NEAR(noise.antenna_noise_dbm + noise.gain_db, noise.receiver_noise_dbm, 1e-12);
        EXPECT_NEAR(noise.antenna_temperature_k, static_cast<double>(antenna_k),
                    1e-12 * static_cast<double>(antenna_k));
        EXPECT_EQ(noise.input_intercept_dbm, last.input_intercept_dbm);
        EXPECT_EQ(noise.two_tone_dbm, last.two_tone_dbm);
        EXPECT_EQ(noise.products_dbm, last.products_dbm);
        EXPECT_EQ(noise.near_level_dbm, near_dbm);
        EXPECT_EQ(noise.far_level_dbm, far_dbm);
        EXPECT_NEAR(noise.far_carrier_to_noise_db, last.far_carrier_to_noise_db, 1e-12);
        EXPECT_EQ(noise.far_carrier_to_noise_plus_interference_db, noise.far_carrier_to_noise_db); // none is given
        EXPECT_EQ(noise.receiver_interference_dbm, -infinity);
        if (std::isfinite(noise.input_intercept_dbm)) {
            EXPECT_NEAR(noise.spurious_free_range_db,
                        lvb_spurious_free_range_db(noise.input_intercept_dbm, noise.antenna_noise_dbm), 1e-12);
        }
        EXPECT_EQ(std::isnan(noise.margin_db), book.conditions.stated == 0);
        if (book.conditions.stated != 0) {
            EXPECT_NEAR(noise.sensitivity_dbm - noise.antenna_noise_dbm, book.conditions.carrier_to_noise_db, 1e-12);
            EXPECT_NEAR(noise.margin_db + book.conditions.carrier_to_noise_db, noise.far_carrier_to_noise_db, 1e-12);
        }
    });
}

TEST(Compression, IsFoundWhereEachStageCompressesFirst) {
    with_random_books(92, 400, [](Book &book, Random &) {
        const std::size_t first = first_of(book.chain);
        double gain = 0.0, least = infinity;
        std::int32_t compressing = -1;
        const std::uint32_t carriers =
            book.conditions.carriers; // all of them bear on a stage, or one where none are given
        const double together_db = carriers == 0 ? 0.0 : 10.0 * std::log10(carriers);
        for (std::size_t i = first + 1; i < book.chain.stages.size(); ++i) {
            const lvb_stage &in = book.chain.stages[i];
            const double before = gain;
            gain = book.lines[i].gain_db;
            const bool stated = (in.stated & LVB_STATED_COMPRESSION) != 0;
            EXPECT_EQ(std::isnan(book.lines[i].compression_dbm), !stated);
            if (!stated) continue;
            // the input that the stage sees: its output less what its gain has fallen to
            const double at_input =
                in.kind == LVB_KIND_RECEIVER ? in.compression_dbm : in.compression_dbm - (gain - before - 1.0);
            EXPECT_NEAR(book.lines[i].compression_dbm, at_input - before, 1e-10);
            EXPECT_NEAR(book.lines[i].compression_headroom_db,
                        book.lines[i].compression_dbm - (book.chain.levels[first].near_level_dbm + together_db), 1e-10);
            if (book.lines[i].compression_dbm < least)
                least = book.lines[i].compression_dbm, compressing = static_cast<std::int32_t>(i);
        }
        EXPECT_EQ(book.noise.compressing_stage, compressing);
        if (compressing < 0) EXPECT_TRUE(std::isnan(book.noise.compression_dbm));
        else EXPECT_EQ(book.noise.compression_dbm, least);
    });
}

TEST(Amplifier, IsComparedWithTheChainWithoutIt) {
    int compared = 0, called_out = 0, of_no_gain = 0;
    with_random_books(93, 400, [&](Book &book, Random &) {
        double worst = 0.0;
        for (std::size_t i = first_of(book.chain) + 1; i < book.chain.stages.size(); ++i) {
            const lvb_noise_line &line = book.lines[i];
            const bool is_amplifier = book.chain.stages[i].kind == LVB_KIND_AMPLIFIER;
            EXPECT_EQ(std::isnan(line.carrier_to_noise_change_db), !is_amplifier);
            if (!is_amplifier) continue;
            Book without = book;
            without.chain.stages.erase(without.chain.stages.begin() + static_cast<std::ptrdiff_t>(i));
            without.sound();
            ++compared;
            const double carrier_to_noise = without.noise.antenna_noise_dbm - book.noise.antenna_noise_dbm;
            EXPECT_NEAR(line.carrier_to_noise_change_db, carrier_to_noise, 1e-10);
            double cost = line.carrier_to_noise_change_db;
            if (std::isfinite(without.noise.input_intercept_dbm)) {
                EXPECT_NEAR(line.range_change_db,
                            book.noise.spurious_free_range_db - without.noise.spurious_free_range_db, 1e-10);
            } else {
                EXPECT_EQ(line.range_change_db, -infinity); // without it nothing bends
            }
            cost = std::min(cost, line.range_change_db);
            const bool out = cost < -1e-9; // whatever its gain
            EXPECT_EQ((line.notes & LVB_NOTE_RANGE_LOWERED) != 0, out);
            if (out) worst = std::min(worst, cost);
            called_out += out ? 1 : 0;
            of_no_gain += out && book.chain.levels[i].near_change_db <= 0.0 ? 1 : 0;
        }
        const std::int32_t stage = book.noise.range_lowering_stage;
        ASSERT_EQ(stage >= 0, worst < 0.0);
        if (stage < 0) return;
        const lvb_noise_line &line = book.lines[static_cast<std::size_t>(stage)];
        EXPECT_EQ(std::min(line.range_change_db, line.carrier_to_noise_change_db), worst);
    });
    EXPECT_GT(compared, 100);
    EXPECT_GT(called_out, 30);
    EXPECT_GT(of_no_gain, 0);
}

TEST(Amplifier, OfUnityGainOrLessIsCalledOutWhereItLowersTheRange) {
    // An active combiner adds noise and products and brings nothing: by Friis, a receiver of 4 dB alone against
    // F = F1 + (F2 - 1) / G1.
    for (const double gain_db : {0.0, -0.5, -3.0}) {
        SCOPED_TRACE(gain_db);
        Book book({amplifier(gain_db, 6.0, 20.0), noisy_receiver(4.0, 10.0)});
        book.sound();
        const lvb_noise_line &line = book.lines[1];
        const double cascade = std::pow(10.0, 0.6) + (std::pow(10.0, 0.4) - 1.0) / std::pow(10.0, gain_db / 10.0);
        EXPECT_NEAR(line.carrier_to_noise_change_db, 4.0 - 10.0 * std::log10(cascade), 1e-9);
        EXPECT_LT(line.carrier_to_noise_change_db, 0.0);
        EXPECT_EQ(line.notes & LVB_NOTE_RANGE_LOWERED, static_cast<std::uint32_t>(LVB_NOTE_RANGE_LOWERED));
        EXPECT_EQ(book.noise.range_lowering_stage, 1);
    }
    // One that has no noise of its own and hardly bends changes nothing but by rounding.
    Book ideal({amplifier(0.0, 0.0, 150.0), noisy_receiver(4.0, 10.0)});
    EXPECT_EQ(ideal.sound().range_lowering_stage, -1);
    EXPECT_NEAR(ideal.lines[1].range_change_db, 0.0, 1e-9);
}

TEST(Amplifier, ThatHelpsBothIsNotCalledOut) {
    // Between a filter that limits the range and a noisy receiver that does not bend.
    Book book({amplifier(10.0, 1.0, 150.0), noisy_receiver(30.0, 150.0)});
    lvb_stage &front = *book.chain.stages.insert(book.chain.stages.begin() + 1, stage(LVB_KIND_PASSIVE));
    front.stated = LVB_STATED_INTERCEPT;
    front.intercept_dbm = 0.0;
    EXPECT_GT(book.sound().spurious_free_range_db, 0.0);
    EXPECT_GT(book.lines[2].range_change_db, 0.0);
    EXPECT_GT(book.lines[2].carrier_to_noise_change_db, 0.0);
    EXPECT_EQ(book.noise.range_lowering_stage, -1);
    EXPECT_EQ(book.noise.notes & LVB_NOTE_RANGE_LOWERED, 0u);
    // One with more noise than the receiver behind it lifts the level and lowers the carrier to noise.
    Book worse({amplifier(10.0, 12.0), noisy_receiver(3.0)});
    EXPECT_LT((worse.sound(), worse.lines[1].carrier_to_noise_change_db), 0.0);
    EXPECT_EQ(worse.noise.range_lowering_stage, 1);
}

// ---- Properties.

TEST(Cascade, OfOneStageIsThatStage) {
    Random random(94);
    for (int i = 0; i < 300; ++i) {
        const double gain = random.uniform(-20.0, 60.0), figure = random.uniform(0.1, 20.0),
                     intercept = random.uniform(-20.0, 50.0), compression = random.uniform(-30.0, 30.0);
        Book one({compressing(amplifier(gain, figure, intercept), compression)});
        one.sound();
        EXPECT_NEAR(one.noise.noise_figure_db, figure, 1e-12);
        EXPECT_NEAR(one.lines[1].stage_noise_figure_db, figure, 1e-12);
        EXPECT_NEAR(one.noise.output_intercept_dbm, intercept, 1e-12);
        EXPECT_NEAR(one.noise.input_intercept_dbm, intercept - gain, 1e-12);
        EXPECT_NEAR(one.noise.compression_dbm, compression - gain + 1.0, 1e-12);
        EXPECT_NEAR(one.noise.antenna_noise_dbm, lvb_sensitivity_dbm(0.2, figure, 0.0), 1e-12);
        Book end({compressing(noisy_receiver(figure, intercept), compression)});
        EXPECT_NEAR(end.sound().noise_figure_db, figure, 1e-12);
        EXPECT_EQ(end.noise.input_intercept_dbm, intercept);
        EXPECT_EQ(end.noise.compression_dbm, compression);
    }
}

TEST(Cascade, OfPassiveStagesAt290KIsTheirLoss) {
    Random random(95);
    for (int i = 0; i < 300; ++i) {
        const double a = random.uniform(-30.0, 0.0), b = random.uniform(-30.0, 0.0);
        Book book({stage(LVB_KIND_PASSIVE, a), stage(LVB_KIND_CABLE, b)});
        EXPECT_NEAR(book.sound().noise_figure_db, -a - b, 1e-11);
        EXPECT_NEAR(book.noise.receiver_noise_dbm, lvb_thermal_noise_dbm(0.2, 290.0), 1e-11); // in balance
        EXPECT_EQ(book.noise.input_intercept_dbm, infinity);
        EXPECT_EQ(book.noise.spurious_free_range_db, infinity);
        book.chain.link.temperature_degc = 60.0;
        EXPECT_GT(book.sound().noise_figure_db, -a - b);
    }
}

TEST(Cascade, IsNotChangedByAStageThatDoesNothing) {
    with_random_books(96, 300, [](Book &book, Random &random) {
        Book longer = book;
        const std::size_t first = first_of(book.chain);
        std::size_t end = book.chain.stages.size(); // before a receiver
        if (book.chain.stages.back().kind == LVB_KIND_RECEIVER) --end;
        const std::size_t at = first + 1 + random.below(end - first);
        const lvb_stage nothing[] = {stage(LVB_KIND_PASSIVE), amplifier(0.0, 0.0, 150.0)};
        const bool bends = random.below(2) != 0; // the amplifier, a little
        longer.chain.stages.insert(longer.chain.stages.begin() + static_cast<std::ptrdiff_t>(at), nothing[bends]);
        longer.sound();
        EXPECT_NEAR(longer.noise.noise_figure_db, book.noise.noise_figure_db, 1e-11);
        EXPECT_NEAR(longer.noise.receiver_noise_dbm, book.noise.receiver_noise_dbm, 1e-11);
        EXPECT_NEAR(longer.noise.far_carrier_to_noise_db, book.noise.far_carrier_to_noise_db, 1e-11);
        if (std::isfinite(book.noise.input_intercept_dbm)) {
            const long double before_db = at == first + 1 ? 0.0L : book.lines[at - 1].gain_db;
            const long double bend = bends ? ratio(before_db - 150.0L) : 0.0L;
            EXPECT_NEAR(longer.noise.input_intercept_dbm,
                        static_cast<double>(-db(ratio(-book.noise.input_intercept_dbm) + bend)), 1e-11);
        }
    });
}

TEST(Cascade, RisesWithEveryFigureAndFallsWithGainBeforeIt) {
    Random random(97);
    for (int i = 0; i < 300; ++i) {
        const double gain = random.uniform(1.0, 30.0), figure = random.uniform(0.5, 10.0),
                     last = random.uniform(1.0, 20.0);
        const auto of = [](double g, double f, double l) {
            Book book({amplifier(g, f, 30.0), noisy_receiver(l, 0.0)});
            return book.sound();
        };
        const lvb_noise base = of(gain, figure, last);
        EXPECT_GT(of(gain, figure + 0.1, last).noise_figure_db, base.noise_figure_db);
        EXPECT_GT(of(gain, figure, last + 0.1).noise_figure_db, base.noise_figure_db);
        EXPECT_LT(of(gain + 0.1, figure, last).noise_figure_db, base.noise_figure_db);
        EXPECT_LT(of(gain + 0.1, figure, last).input_intercept_dbm, base.input_intercept_dbm);
    }
}

TEST(Noise, ScalesWithTheBandwidthAndTheAntenna) {
    with_random_books(98, 200, [](Book &book, Random &) {
        Book wide = book;
        wide.conditions.bandwidth_mhz *= 10.0;
        EXPECT_NEAR(wide.sound().antenna_noise_dbm - book.noise.antenna_noise_dbm, 10.0, 1e-11);
        EXPECT_EQ(wide.noise.noise_figure_db, book.noise.noise_figure_db);
        Book hot = book;
        hot.conditions.external_noise_figure_db = 0.0;
        hot.conditions.antenna_temperature_k = 3.0 * book.noise.antenna_temperature_k;
        EXPECT_GT(hot.sound().antenna_noise_dbm, book.noise.antenna_noise_dbm);
        EXPECT_EQ(hot.noise.noise_temperature_k, book.noise.noise_temperature_k);
        // a figure and its temperature are the same antenna: fa = ta / 290
        Book same = hot;
        same.conditions.antenna_temperature_k = 0.0;
        same.conditions.external_noise_figure_db = lvb_db_from_power_ratio(hot.noise.antenna_temperature_k / 290.0);
        EXPECT_NEAR(same.sound().antenna_noise_dbm, hot.noise.antenna_noise_dbm, 1e-11);
    });
}

TEST(Noise, AsMeasuredStandsWhereItWasMeasured) {
    with_random_books(99, 200, [](Book &book, Random &random) {
        book.conditions.noise_dbm = random.uniform(-130.0, -70.0);
        book.conditions.noise_at = LVB_PLACE_RECEIVER;
        EXPECT_EQ(book.sound().receiver_noise_dbm, book.conditions.noise_dbm);
        EXPECT_NEAR(book.noise.antenna_noise_dbm, book.conditions.noise_dbm - book.noise.gain_db, 1e-12);
        EXPECT_NEAR(book.noise.near_carrier_to_noise_db, book.noise.near_level_dbm - book.conditions.noise_dbm, 1e-12);
        book.conditions.noise_at = LVB_PLACE_ANTENNA;
        EXPECT_EQ(book.sound().antenna_noise_dbm, book.conditions.noise_dbm);
        EXPECT_NEAR(book.noise.receiver_noise_dbm, book.conditions.noise_dbm + book.noise.gain_db, 1e-12);
    });
}

TEST(Interference, AddsToTheNoise) {
    with_random_books(100, 200, [](Book &book, Random &) {
        const lvb_noise alone = book.noise;
        book.conditions.interference_at = LVB_PLACE_RECEIVER;
        book.conditions.interference_dbm = alone.receiver_noise_dbm; // as much as the noise
        if (std::fabs(alone.receiver_noise_dbm) > 240.0) return;
        EXPECT_NEAR(book.sound().far_carrier_to_noise_plus_interference_db,
                    alone.far_carrier_to_noise_db - 10.0 * std::log10(2.0), 1e-11);
        EXPECT_EQ(book.noise.far_carrier_to_noise_db, alone.far_carrier_to_noise_db);
        EXPECT_EQ(book.noise.receiver_interference_dbm, alone.receiver_noise_dbm);
        const double at_receiver = book.noise.near_carrier_to_noise_plus_interference_db;
        book.conditions.interference_at = LVB_PLACE_ANTENNA;
        book.conditions.interference_dbm -= alone.gain_db;
        if (std::fabs(book.conditions.interference_dbm) > 150.0) return;
        EXPECT_NEAR(book.sound().near_carrier_to_noise_plus_interference_db, at_receiver, 1e-10);
        if (book.conditions.stated != 0) {
            EXPECT_NEAR(book.noise.margin_db,
                        book.noise.far_carrier_to_noise_plus_interference_db - book.conditions.carrier_to_noise_db,
                        1e-12);
        }
    });
}

// ---- What is not stated, and the verdict.

TEST(Missing, IsNeverGuessed) {
    Book book({stage(LVB_KIND_PASSIVE, -2.0), stage(LVB_KIND_AMPLIFIER, 10.0), receiver()});
    book.conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
    book.sound();
    EXPECT_EQ(book.noise.verdict, LVB_VERDICT_NOT_JUDGED);
    EXPECT_EQ(book.noise.notes,
              static_cast<std::uint32_t>(LVB_NOTE_NO_NOISE_FIGURE | LVB_NOTE_NO_INTERCEPT | LVB_NOTE_NO_COMPRESSION));
    EXPECT_EQ(book.noise.no_noise_figure_stage, 2);
    EXPECT_EQ(book.noise.no_intercept_stage, 2);
    EXPECT_EQ(book.noise.compressing_stage, -1);
    EXPECT_NEAR(book.lines[1].noise_figure_db, 2.0, 1e-12); // so far it is known
    for (const double unknown : {book.lines[2].noise_figure_db, book.lines[3].noise_dbm, book.noise.antenna_noise_dbm,
                                 book.noise.margin_db, book.noise.sensitivity_dbm, book.noise.input_intercept_dbm,
                                 book.noise.two_tone_dbm, book.noise.compression_dbm, book.noise.spurious_free_range_db,
                                 book.noise.far_carrier_to_noise_db, book.lines[2].range_change_db})
        EXPECT_TRUE(std::isnan(unknown));
    EXPECT_EQ(book.noise.gain_db, 8.0);

    // A measured floor is enough for the carrier to noise.
    book.conditions.noise_at = LVB_PLACE_RECEIVER;
    book.conditions.noise_dbm = -100.0;
    EXPECT_EQ(book.sound().verdict, LVB_VERDICT_HOLDS);
    EXPECT_NEAR(book.noise.far_carrier_to_noise_db, -60.0 + 8.0 + 100.0, 1e-12);
    // Only the receiver's figure is missing: it is the first.
    Book other({amplifier(10.0, 3.0), receiver()});
    EXPECT_EQ(other.sound().no_noise_figure_stage, 2);
    EXPECT_EQ(other.noise.no_intercept_stage, 1);
}

TEST(Verdict, JudgesNoiseAtTheFarEndAndCompressionAtTheNearEnd) {
    const auto judged = [](double needed_db, double compression_dbm, double tolerance_db) {
        Book book(Chain({source(10.0, tolerance_db), antenna(), air(), stage(LVB_KIND_ALLOWANCE, -20.0), antenna(),
                         compressing(noisy_receiver(6.0), compression_dbm)},
                        600.0, 100.0, 1.0));
        book.conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
        book.conditions.carrier_to_noise_db = needed_db;
        EXPECT_NEAR(book.sound().far_carrier_to_noise_db,
                    10.0 - lvb_free_space_loss_db(600.0, 100.0) - 20.0 - lvb_sensitivity_dbm(0.2, 6.0, 0.0), 1e-11);
        EXPECT_NEAR(book.noise.compression_headroom_db, compression_dbm - (10.0 - lvb_free_space_loss_db(600.0, 1.0)),
                    1e-11);
        return book.noise.verdict;
    };
    // far end 36.95 dB above the noise, near end at -18.01 dBm
    EXPECT_EQ(judged(20.0, -10.0, 0.0), LVB_VERDICT_HOLDS);
    EXPECT_EQ(judged(20.0, -10.0, 9.0), LVB_VERDICT_DOUBTFUL); // headroom 8 dB
    EXPECT_EQ(judged(40.0, -10.0, 0.0), LVB_VERDICT_DROPS_OUT);
    EXPECT_EQ(judged(20.0, -30.0, 0.0), LVB_VERDICT_OVERLOADS);
    EXPECT_EQ(judged(40.0, -30.0, 0.0), LVB_VERDICT_DROPS_OUT_AND_OVERLOADS);
    // forty such carriers are 16 dB more than one
    Book forty(Chain({source(-20.0), compressing(noisy_receiver(6.0), -10.0)}, 600.0));
    EXPECT_NEAR(forty.sound().compression_headroom_db, 10.0, 1e-12);
    forty.conditions.carriers = 40;
    EXPECT_NEAR(forty.sound().compression_headroom_db, 10.0 - 16.0206, 1e-4);
    EXPECT_EQ(forty.noise.verdict, LVB_VERDICT_OVERLOADS);
    Book neither({noisy_receiver(6.0)});
    EXPECT_EQ(neither.sound().verdict, LVB_VERDICT_NOT_JUDGED);
}

TEST(LongChains, NeitherOverflowNorVanish) {
    for (const double gain : {-200.0, 120.0}) {
        std::vector<lvb_stage> stages(LVB_MAX_STAGES - 2,
                                      gain < 0.0 ? stage(LVB_KIND_PASSIVE, gain) : amplifier(gain, 3.0, 30.0));
        stages.push_back(noisy_receiver(10.0, 0.0));
        Book book(std::move(stages));
        book.sound();
        EXPECT_TRUE(std::isfinite(book.noise.noise_figure_db));
        EXPECT_TRUE(std::isfinite(book.noise.input_intercept_dbm));
        if (gain < 0.0) EXPECT_NEAR(book.noise.noise_figure_db, -gain * (LVB_MAX_STAGES - 2) + 10.0, 1e-6);
        else EXPECT_NEAR(book.noise.noise_figure_db, 3.0, 1e-9);
    }
}

TEST(Lines, AreTheSameBitsAsTheResultAlone) {
    with_random_books(101, 200, [](Book &book, Random &) {
        auto alone = sized<lvb_noise>();
        ASSERT_EQ(lvb_compute_noise(&book.chain.link, &book.conditions, &alone, nullptr, 0, nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&alone, &book.noise, sizeof alone), 0);
    });
}

TEST(Budget, IsTheSameWithAndWithoutFiguresOfNoise) {
    with_random_books(102, 200, [](Book &book, Random &) {
        Chain plain = book.chain;
        for (lvb_stage &in : plain.stages) {
            in.stated &= LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING;
            in.noise_figure_db = in.intercept_dbm = in.compression_dbm = 0.0;
        }
        ASSERT_EQ(plain.compute(), LVB_OK);
        EXPECT_EQ(std::memcmp(&plain.budget, &book.chain.budget, sizeof plain.budget), 0);
    });
}

} // namespace
