// Properties of a transmitter beside a receiver: its remedies restore what was wanted, and what is refused.
#include "door/refusal.hpp"
#include "units/random.hpp"

#include <cmath>
#include <limits>

namespace {

using proof::Random;
using proof::sized;

lvb_neighbours stage_side() { // an outbound transmitter two metres from an inbound receive antenna
    auto in = sized<lvb_neighbours>();
    in.stated = LVB_STATED_BLOCKING | LVB_STATED_RECEIVER_NOISE;
    in.transmit_dbm = 15.0;
    in.transmit_gain_dbi = -5.0;
    in.receive_gain_dbi = 2.0;
    in.separation_m = 2.0;
    in.transmit_mhz = 500.0;
    in.receive_mhz = 600.0;
    in.receive_loss_db = 1.5;
    in.blocking_dbm = -25.0;
    in.transmit_noise_dbc_per_hz = -140.0;
    in.receiver_bandwidth_mhz = 0.2;
    in.receiver_noise_dbm = -115.0;
    in.wanted_margin_db = 10.0;
    in.wanted_rise_db = 0.5;
    return in;
}

lvb_neighbours any_neighbours(Random &random) {
    lvb_neighbours in = stage_side();
    in.transmit_dbm = random.uniform(-20.0, 50.0);
    in.transmit_gain_dbi = random.uniform(-20.0, 10.0);
    in.receive_gain_dbi = random.uniform(-20.0, 10.0);
    in.separation_m = random.log_uniform(0, 2);
    in.transmit_mhz = random.uniform(100.0, 6000.0);
    in.receive_mhz = random.uniform(100.0, 6000.0);
    in.receive_loss_db = random.uniform(0.0, 10.0);
    in.receive_filter_db = random.uniform(0.0, 20.0);
    in.transmit_filter_db = random.uniform(0.0, 20.0);
    in.blocking_dbm = random.uniform(-50.0, 10.0);
    in.transmit_noise_dbc_per_hz = random.uniform(-160.0, -90.0);
    in.receiver_bandwidth_mhz = random.log_uniform(-2, 1);
    in.receiver_noise_dbm = random.uniform(-130.0, -80.0);
    in.wanted_margin_db = random.uniform(0.0, 20.0);
    in.wanted_rise_db = random.uniform(0.05, 6.0);
    return in;
}

lvb_coexistence result_of(const lvb_neighbours &in) {
    auto out = sized<lvb_coexistence>();
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_coexistence(&in, &out, &fault), LVB_OK) << proof::text_of(fault);
    return out;
}

TEST(Coexistence, AddsUp) {
    Random random(601);
    for (int i = 0; i < 500; ++i) {
        const lvb_neighbours in = any_neighbours(random);
        const lvb_coexistence out = result_of(in);
        const double gains = in.transmit_gain_dbi + in.receive_gain_dbi;
        EXPECT_NEAR(out.coupling_loss_db, lvb_free_space_loss_db(in.transmit_mhz, in.separation_m) - gains, 1e-12);
        EXPECT_NEAR(out.noise_coupling_loss_db, lvb_free_space_loss_db(in.receive_mhz, in.separation_m) - gains, 1e-12);
        EXPECT_NEAR(out.blocker_dbm, in.transmit_dbm - out.coupling_loss_db - in.receive_loss_db - in.receive_filter_db,
                    1e-12);
        EXPECT_NEAR(out.blocking_margin_db, in.blocking_dbm - out.blocker_dbm, 1e-12);
        const double noise = in.transmit_dbm + in.transmit_noise_dbc_per_hz + 60.0 +
                             10.0 * std::log10(in.receiver_bandwidth_mhz) - in.transmit_filter_db;
        EXPECT_NEAR(out.noise_dbm, noise - out.noise_coupling_loss_db - in.receive_loss_db, 1e-12);
        const long double sum = powl(10.0L, static_cast<long double>(in.receiver_noise_dbm) / 10.0L) +
                                powl(10.0L, static_cast<long double>(out.noise_dbm) / 10.0L);
        EXPECT_NEAR(out.noise_rise_db, static_cast<double>(10.0L * log10l(sum)) - in.receiver_noise_dbm, 1e-11);
    }
}

// Each remedy, taken by itself, leaves just what was wanted.
TEST(Coexistence, FiltersRestoreWhatIsWanted) {
    Random random(602);
    int lacking = 0;
    for (int i = 0; i < 1000; ++i) {
        lvb_neighbours in = any_neighbours(random);
        const lvb_coexistence before = result_of(in);
        in.receive_filter_db += before.more_receive_filter_db;
        in.transmit_filter_db += before.more_transmit_filter_db;
        const lvb_coexistence after = result_of(in);
        if (before.more_receive_filter_db > 0.0) {
            ++lacking;
            EXPECT_NEAR(after.blocking_margin_db, in.wanted_margin_db, 1e-11);
        } else {
            EXPECT_GE(after.blocking_margin_db, in.wanted_margin_db);
        }
        if (before.more_transmit_filter_db > 0.0) {
            ++lacking;
            EXPECT_NEAR(after.noise_rise_db, in.wanted_rise_db, 1e-11);
        } else {
            EXPECT_LE(after.noise_rise_db, in.wanted_rise_db);
        }
        EXPECT_NEAR(after.more_receive_filter_db, 0.0, 1e-11);
        EXPECT_NEAR(after.more_transmit_filter_db, 0.0, 1e-11);
    }
    EXPECT_GT(lacking, 200);
    EXPECT_LT(lacking, 1800);
}

TEST(Coexistence, SeparationsRestoreWhatIsWanted) {
    Random random(603);
    for (int i = 0; i < 1000; ++i) {
        lvb_neighbours in = any_neighbours(random);
        const lvb_coexistence before = result_of(in);
        EXPECT_EQ(before.blocking_separation_m > in.separation_m, before.more_receive_filter_db > 0.0);
        EXPECT_EQ(before.noise_separation_m > in.separation_m, before.more_transmit_filter_db > 0.0);
        in.separation_m = before.blocking_separation_m;
        if (in.separation_m >= 0.01) { // nearer, no separation is accepted
            EXPECT_NEAR(result_of(in).blocking_margin_db, in.wanted_margin_db, 1e-10);
        }
        in.separation_m = before.noise_separation_m;
        if (in.separation_m >= 0.01) {
            EXPECT_NEAR(result_of(in).noise_rise_db, in.wanted_rise_db, 1e-10);
        }
    }
}

TEST(Coexistence, EachDecibelIsADecibel) {
    Random random(604);
    for (int i = 0; i < 300; ++i) {
        const lvb_neighbours in = any_neighbours(random);
        const lvb_coexistence before = result_of(in);
        lvb_neighbours more = in;
        more.transmit_dbm += 3.0; // the noise stated in dBc follows
        EXPECT_NEAR(result_of(more).blocking_margin_db, before.blocking_margin_db - 3.0, 1e-12);
        EXPECT_NEAR(result_of(more).noise_dbm, before.noise_dbm + 3.0, 1e-12);
        more = in;
        more.receive_filter_db += 7.0; // does nothing against noise at the receiver's own frequency
        EXPECT_NEAR(result_of(more).blocking_margin_db, before.blocking_margin_db + 7.0, 1e-12);
        EXPECT_EQ(result_of(more).noise_rise_db, before.noise_rise_db);
        more = in;
        more.transmit_filter_db += 7.0; // and this one nothing against blocking
        EXPECT_EQ(result_of(more).blocking_margin_db, before.blocking_margin_db);
        EXPECT_NEAR(result_of(more).noise_dbm, before.noise_dbm - 7.0, 1e-12);
        more = in;
        std::swap(more.transmit_gain_dbi, more.receive_gain_dbi); // reciprocity
        EXPECT_NEAR(result_of(more).blocker_dbm, before.blocker_dbm, 1e-12);
        more = in;
        more.separation_m *= 10.0;
        EXPECT_NEAR(result_of(more).coupling_loss_db, before.coupling_loss_db + 20.0, 1e-12);
    }
}

TEST(Coexistence, AMeasuredCouplingStandsInPlaceOfTheComputedOne) {
    const lvb_neighbours computed = stage_side();
    const lvb_coexistence free_space = result_of(computed);
    lvb_neighbours measured = computed;
    measured.transmit_gain_dbi = measured.receive_gain_dbi = 0.0;
    measured.separation_m = measured.transmit_mhz = measured.receive_mhz = 0.0;
    measured.coupling_loss_db = free_space.coupling_loss_db;
    const lvb_coexistence out = result_of(measured);
    EXPECT_EQ(out.blocker_dbm, free_space.blocker_dbm);
    EXPECT_EQ(out.noise_coupling_loss_db, out.coupling_loss_db);
    EXPECT_TRUE(std::isnan(out.blocking_separation_m) && std::isnan(out.noise_separation_m));
    EXPECT_EQ(out.more_receive_filter_db, free_space.more_receive_filter_db);
    EXPECT_EQ(out.notes, 0u);
}

TEST(Coexistence, BothFormsOfTheNoiseAgree) {
    lvb_neighbours in = stage_side();
    const lvb_coexistence relative = result_of(in);
    in.stated |= LVB_STATED_TRANSMIT_NOISE;
    in.transmit_noise_dbm = 15.0 - 140.0 + 10.0 * std::log10(0.2e6);
    in.transmit_noise_dbc_per_hz = in.receiver_bandwidth_mhz = 0.0;
    EXPECT_NEAR(result_of(in).noise_dbm, relative.noise_dbm, 1e-12);
}

// Both forms tell the noise as it is without the filter: the filter lowers both.
TEST(Coexistence, TheNoiseIsToldWithoutTheTransmitFilter) {
    lvb_neighbours in = stage_side();
    for (const bool absolute : {false, true}) {
        if (absolute) {
            in.stated |= LVB_STATED_TRANSMIT_NOISE;
            in.transmit_noise_dbm = 15.0 - 140.0 + 10.0 * std::log10(0.2e6);
            in.transmit_noise_dbc_per_hz = in.receiver_bandwidth_mhz = 0.0;
        }
        in.transmit_filter_db = 0.0;
        const double without = result_of(in).noise_dbm;
        in.transmit_filter_db = 30.0;
        EXPECT_NEAR(result_of(in).noise_dbm, without - 30.0, 1e-12);
    }
}

TEST(Coexistence, DefaultsAndWhatIsNotGiven) {
    lvb_neighbours in = stage_side();
    in.wanted_rise_db = 0.0;
    const double usual = result_of(in).more_transmit_filter_db;
    in.wanted_rise_db = 1.0;
    EXPECT_EQ(result_of(in).more_transmit_filter_db, usual);
    in.receive_mhz = 0.0;
    EXPECT_EQ(result_of(in).noise_coupling_loss_db, result_of(in).coupling_loss_db);

    in = sized<lvb_neighbours>();
    in.separation_m = 3.0;
    in.transmit_mhz = 600.0;
    const lvb_coexistence bare = result_of(in);
    EXPECT_EQ(bare.coupling_loss_db, lvb_free_space_loss_db(600.0, 3.0));
    EXPECT_EQ(bare.blocker_dbm, -bare.coupling_loss_db); // 0 dBm
    for (const double none : {bare.blocking_margin_db, bare.noise_dbm, bare.noise_rise_db, bare.more_receive_filter_db,
                              bare.more_transmit_filter_db, bare.blocking_separation_m, bare.noise_separation_m})
        EXPECT_TRUE(std::isnan(none));
    in.stated = LVB_STATED_TRANSMIT_NOISE; // 0 dBm of noise, and no floor to compare it with
    EXPECT_EQ(result_of(in).noise_dbm, -bare.coupling_loss_db);
    EXPECT_TRUE(std::isnan(result_of(in).noise_rise_db));
}

// A transmitter so weak that it could stand closer than free space holds: what is told there is noted too.
TEST(Coexistence, NotesAToldSeparationUnderAWavelength) {
    auto in = sized<lvb_neighbours>();
    in.stated = LVB_STATED_BLOCKING;
    in.separation_m = 10.0;
    in.transmit_mhz = 600.0; // a wave of half a metre
    const auto notes_with_blocking_at = [&](double room_db) {
        in.blocking_dbm = -lvb_free_space_loss_db(600.0, in.separation_m) + room_db;
        const lvb_coexistence out = result_of(in);
        EXPECT_NEAR(out.blocking_separation_m, in.separation_m * std::pow(10.0, -room_db / 20.0), 1e-11);
        return out.notes;
    };
    EXPECT_EQ(notes_with_blocking_at(41.0), std::uint32_t{LVB_NOTE_NEAR_FIELD}); // 0.089 m
    EXPECT_EQ(notes_with_blocking_at(20.0), 0u);                                 // 1 m
    in.stated = LVB_STATED_TRANSMIT_NOISE | LVB_STATED_RECEIVER_NOISE;           // and by its noise
    in.blocking_dbm = 0.0;
    in.wanted_rise_db = lvb_db_from_power_ratio(2.0); // as strong as the receiver's own
    in.transmit_noise_dbm = -100.0;
    in.receiver_noise_dbm = -100.0 - lvb_free_space_loss_db(600.0, in.separation_m) + 41.0;
    EXPECT_NEAR(result_of(in).noise_separation_m, 0.0891, 0.0001);
    EXPECT_EQ(result_of(in).notes, std::uint32_t{LVB_NOTE_NEAR_FIELD});
    in.receiver_noise_dbm -= 21.0;
    EXPECT_EQ(result_of(in).notes, 0u);
}

TEST(Coexistence, NotesADistanceUnderAWavelength) {
    auto in = sized<lvb_neighbours>(); // nothing is told but the levels
    in.transmit_mhz = 500.0;
    in.receive_mhz = 600.0;
    const double longer = lvb_wavelength_m_from_mhz(500.0);
    in.separation_m = longer;
    EXPECT_EQ(result_of(in).notes, 0u);
    in.separation_m = std::nextafter(longer, 0.0);
    EXPECT_EQ(result_of(in).notes, std::uint32_t{LVB_NOTE_NEAR_FIELD});
    in.receive_mhz = 300.0; // the longer wave counts, whichever it is
    in.separation_m = 0.9;
    EXPECT_EQ(result_of(in).notes, std::uint32_t{LVB_NOTE_NEAR_FIELD});
}

void refused(const lvb_neighbours &in, lvb_status status, std::int32_t field, const char *text = "") {
    proof::Untouched<lvb_coexistence> out;
    auto fault = sized<lvb_fault>();
    EXPECT_STREQ(lvb_status_name(lvb_compute_coexistence(&in, &out.result, &fault)), lvb_status_name(status));
    EXPECT_TRUE(out.holds());
    EXPECT_EQ(fault.structure, LVB_STRUCT_NEIGHBOURS);
    EXPECT_STREQ(lvb_field_name(fault.field), lvb_field_name(field));
    if (*text != '\0') {
        EXPECT_EQ(proof::text_of(fault), text);
    }
}

template <class Change>
lvb_neighbours changed(Change change) {
    lvb_neighbours in = stage_side();
    change(in);
    return in;
}

TEST(Coexistence, RefusesWhatDoesNotBelongTogether) {
    refused(changed([](auto &in) { in.separation_m = 0.0; }), LVB_E_MISSING, LVB_FIELD_SEPARATION_M);
    refused(changed([](auto &in) { in.transmit_mhz = 0.0; }), LVB_E_MISSING, LVB_FIELD_TRANSMIT_MHZ);
    refused(changed([](auto &in) { in.coupling_loss_db = 30.0; }), LVB_E_CONFLICT, LVB_FIELD_SEPARATION_M);
    const auto measured = [](auto change) {
        return changed([&](auto &in) {
            in.coupling_loss_db = 30.0;
            in.separation_m = in.transmit_mhz = in.receive_mhz = in.transmit_gain_dbi = in.receive_gain_dbi = 0.0;
            change(in);
        });
    };
    refused(measured([](auto &in) { in.transmit_gain_dbi = 1.0; }), LVB_E_UNUSED, LVB_FIELD_TRANSMIT_GAIN_DBI,
            "lvb_neighbours.transmit_gain_dbi is filled, but this set-up has no use for it.");
    refused(measured([](auto &in) { in.receive_gain_dbi = 1.0; }), LVB_E_UNUSED, LVB_FIELD_RECEIVE_GAIN_DBI);
    refused(measured([](auto &in) { in.transmit_mhz = 600.0; }), LVB_E_UNUSED, LVB_FIELD_TRANSMIT_MHZ);
    refused(measured([](auto &in) { in.receive_mhz = 600.0; }), LVB_E_UNUSED, LVB_FIELD_RECEIVE_MHZ);

    refused(changed([](auto &in) {
                in.stated |= LVB_STATED_TRANSMIT_NOISE;
                in.transmit_noise_dbm = -80.0;
            }),
            LVB_E_CONFLICT, LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ);
    refused(changed([](auto &in) { in.receiver_bandwidth_mhz = 0.0; }), LVB_E_MISSING,
            LVB_FIELD_RECEIVER_BANDWIDTH_MHZ);
    const auto silent = [](auto change) {
        return changed([&](auto &in) {
            in.transmit_noise_dbc_per_hz = in.receiver_bandwidth_mhz = in.receiver_noise_dbm = in.wanted_rise_db = 0.0;
            in.stated = LVB_STATED_BLOCKING;
            change(in);
        });
    };
    result_of(silent([](auto &) {})); // sound
    refused(silent([](auto &in) { in.receiver_bandwidth_mhz = 0.2; }), LVB_E_UNUSED, LVB_FIELD_RECEIVER_BANDWIDTH_MHZ);
    refused(silent([](auto &in) { in.transmit_filter_db = 9.0; }), LVB_E_UNUSED, LVB_FIELD_TRANSMIT_FILTER_DB);
    refused(silent([](auto &in) { in.wanted_rise_db = 1.0; }), LVB_E_UNUSED, LVB_FIELD_WANTED_RISE_DB);
    refused(silent([](auto &in) {
                in.stated |= LVB_STATED_RECEIVER_NOISE;
                in.receiver_noise_dbm = -100.0;
            }),
            LVB_E_UNUSED, LVB_FIELD_RECEIVER_NOISE_DBM);
    refused(silent([](auto &in) {
                in.stated = 0;
                in.blocking_dbm = 0.0;
            }),
            LVB_E_UNUSED, LVB_FIELD_WANTED_MARGIN_DB);

    refused(changed([](auto &in) { in.stated &= ~std::uint32_t{LVB_STATED_BLOCKING}; }), LVB_E_NOT_STATED,
            LVB_FIELD_BLOCKING_DBM);
    refused(changed([](auto &in) { in.stated &= ~std::uint32_t{LVB_STATED_RECEIVER_NOISE}; }), LVB_E_NOT_STATED,
            LVB_FIELD_RECEIVER_NOISE_DBM);
    refused(changed([](auto &in) { in.transmit_noise_dbm = -80.0; }), LVB_E_NOT_STATED, LVB_FIELD_TRANSMIT_NOISE_DBM);
    refused(changed([](auto &in) { in.stated |= LVB_STATED_FLOOR; }), LVB_E_UNKNOWN_VALUE, LVB_FIELD_STATED);
}

// Every number of the struct, against the range that lvb_describe_field tells.
TEST(Coexistence, RefusesNumbersOutsideTheirRanges) {
    double lvb_neighbours::*const members[] = {&lvb_neighbours::transmit_dbm,
                                               &lvb_neighbours::transmit_gain_dbi,
                                               &lvb_neighbours::receive_gain_dbi,
                                               &lvb_neighbours::separation_m,
                                               &lvb_neighbours::coupling_loss_db,
                                               &lvb_neighbours::transmit_mhz,
                                               &lvb_neighbours::receive_mhz,
                                               &lvb_neighbours::receive_loss_db,
                                               &lvb_neighbours::receive_filter_db,
                                               &lvb_neighbours::transmit_filter_db,
                                               &lvb_neighbours::blocking_dbm,
                                               &lvb_neighbours::transmit_noise_dbm,
                                               &lvb_neighbours::transmit_noise_dbc_per_hz,
                                               &lvb_neighbours::receiver_bandwidth_mhz,
                                               &lvb_neighbours::receiver_noise_dbm,
                                               &lvb_neighbours::wanted_margin_db,
                                               &lvb_neighbours::wanted_rise_db};
    std::int32_t field = LVB_FIELD_TRANSMIT_DBM;
    for (double lvb_neighbours::*const member : members) {
        auto range = sized<lvb_range>();
        ASSERT_EQ(lvb_describe_field(LVB_STRUCT_NEIGHBOURS, 0, field, &range, nullptr), LVB_OK) << field;
        const auto with = [&](double value) { return changed([&](auto &in) { in.*member = value; }); };
        refused(with(std::nextafter(range.minimum, -HUGE_VAL)), LVB_E_BELOW_RANGE, field);
        refused(with(std::nextafter(range.maximum, HUGE_VAL)), LVB_E_ABOVE_RANGE, field);
        refused(with(std::numeric_limits<double>::quiet_NaN()), LVB_E_NAN, field);
        refused(with(HUGE_VAL), LVB_E_INFINITE, field);
        ++field;
    }
    EXPECT_EQ(field, LVB_FIELD_WANTED_RISE_DB + 1);
}

} // namespace
