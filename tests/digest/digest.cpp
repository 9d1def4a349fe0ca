// One list of inputs over every public function, and one digest of all that comes back.
//
//   levelbook-digest           prints the digest of each instruction set that this processor has
//   levelbook-digest FILE      compares them with the one that FILE begins with
//
// Inputs are made with integers and single IEEE operations only, so that they are the same on every machine. What goes
// into the digest are canonical bytes: numbers in little-endian order, every NaN as one NaN, texts with their length.
// The version and the sizes of structs stay out: they may differ where results do not.
#include <levelbook/levelbook.h>

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <string>
#include <vector>

namespace {

// FNV-1a, 64 bits.
class Digest {
  public:
    void number(std::uint64_t x) {
        for (int i = 0; i < 8; ++i) byte(static_cast<unsigned char>(x >> (8 * i)));
    }
    void number(double x) {
        std::uint64_t bits = 0x7ff8000000000000;
        if (x == x) std::memcpy(&bits, &x, sizeof bits);
        number(bits);
    }
    void number(std::int32_t x) { number(static_cast<std::uint64_t>(static_cast<std::int64_t>(x))); }
    void number(std::uint32_t x) { number(std::uint64_t{x}); }
    void text(const char *text) {
        const std::size_t length = std::strlen(text);
        number(std::uint64_t{length});
        for (std::size_t i = 0; i < length; ++i) byte(static_cast<unsigned char>(text[i]));
    }
    template <class... Values>
    void numbers(Values... values) {
        (number(values), ...);
    }
    std::uint64_t value() const { return value_; }

  private:
    void byte(unsigned char b) { value_ = (value_ ^ b) * 0x100000001b3; }
    std::uint64_t value_ = 0xcbf29ce484222325;
};

// Splitmix64 by its published constants.
class Inputs {
  public:
    explicit Inputs(std::uint64_t seed) : state_(seed) {}
    std::uint64_t bits() {
        state_ += 0x9e3779b97f4a7c15;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
        z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
        return z ^ (z >> 31);
    }
    std::uint32_t below(std::uint32_t count) { return static_cast<std::uint32_t>(bits() % count); }
    double uniform(double low, double high) {
        const double part = static_cast<double>(bits() >> 11) * 0x1p-53;
        const double step = (high - low) * part;
        return low + step;
    }
    double any() {
        const std::uint64_t pattern = bits();
        double x;
        std::memcpy(&x, &pattern, sizeof x);
        return x;
    }
    /// A positive number whose exponent lies at most `octaves` from that of 1.
    double sized(std::uint32_t octaves) {
        const std::uint64_t pattern = (bits() >> 12) | (std::uint64_t{1023 - octaves + below(2 * octaves)} << 52);
        double x;
        std::memcpy(&x, &pattern, sizeof x);
        return x;
    }
    double argument() {
        static constexpr double corners[] = {0.0,  -0.0,   1.0,       -1.0,  45.0,     90.0,     180.0,
                                             1e-3, 1000.0, 0x1p-1074, 1e308, HUGE_VAL, -HUGE_VAL};
        switch (below(10)) {
        case 0:
            return any();
        case 1:
            return corners[below(13)];
        case 2:
            return uniform(-1.0, 1.0);
        case 3:
            return 1.0 + sized(40) * 0x1p-20;
        case 4:
            return -sized(40);
        case 5:
        case 6:
            return uniform(-200.0, 200.0);
        default:
            return sized(below(3) ? 12 : 1000);
        }
    }

  private:
    std::uint64_t state_;
};

template <class Struct>
Struct sized() {
    Struct made{};
    made.size = sizeof(Struct);
    return made;
}

void add(Digest &digest, const lvb_fault &fault) {
    digest.numbers(fault.status, fault.structure, fault.field, fault.stage, fault.row, fault.value, fault.minimum,
                   fault.maximum);
    char text[256];
    lvb_fault_text(&fault, text, sizeof text);
    digest.text(text);
}

// ---- Plain functions, for themselves and over columns.

struct Scalar {
    std::uint32_t arity;
    double (*call)(const double *);
};
constexpr Scalar scalars[] = {
// in the order of their LVB_FORMULA_ numbers, as the header keeps it
#define LVB_SCALAR_1(f, range, accuracy) {1, [](const double *x) { return f(x[0]); }},
#define LVB_SCALAR_2(f, range, accuracy) {2, [](const double *x) { return f(x[0], x[1]); }},
#define LVB_SCALAR_3(f, range, accuracy) {3, [](const double *x) { return f(x[0], x[1], x[2]); }},
#include "levelbook_scalars.inc"
};

void add_scalars(Digest &digest) {
    Inputs inputs(1);
    for (const Scalar &scalar : scalars)
        for (int i = 0; i < 2000; ++i) {
            double x[3];
            for (double &argument : x) argument = inputs.argument();
            digest.number(scalar.call(x));
        }
}

void add_columns(Digest &digest, std::int32_t instructions) {
    Inputs inputs(2);
    std::int32_t formula = 0;
    for (const Scalar &scalar : scalars) {
        ++formula;
        for (std::uint32_t round = 0; round < 6; ++round) {
            const std::size_t count = round < 5 ? 700 + round : 0;
            const bool ordinary = round % 2 == 0;
            std::vector<double> columns[3], result(count);
            for (auto &column : columns)
                for (std::size_t i = 0; i <= count; ++i)
                    column.push_back(ordinary ? inputs.uniform(0.0, 1.0) : inputs.argument());
            auto call = sized<lvb_columns>();
            call.formula = formula;
            call.instructions = instructions;
            call.single = round % (1U << scalar.arity);
            call.count = count;
            call.argument_1 = columns[0].data();
            call.argument_2 = scalar.arity > 1 ? columns[1].data() : nullptr;
            call.argument_3 = scalar.arity > 2 ? columns[2].data() : nullptr;
            call.result = result.data();
            auto bad = sized<lvb_bad>();
            digest.number(lvb_compute_columns(&call, &bad, nullptr));
            digest.numbers(bad.count, bad.first);
            for (const double x : result) digest.number(x);
        }
    }
}

// ---- Cable, chains, grids.

const double own_mhz[] = {50.0, 144.0, 432.0, 900.0, 2400.0};
const double own_db[] = {3.1, 5.5, 10.0, 15.2, 28.0};
const double steep_db[] = {1.0, 1.4, 12.0, 20.0, 25.0};
const double gain_db[] = {-3.0, -1.0, -2.5, -0.5, -10.0};

lvb_cable_table own_table(bool steep) {
    auto table = sized<lvb_cable_table>();
    table.row_count = 5;
    table.frequency_mhz = own_mhz;
    table.attenuation_db_per_100m = steep ? steep_db : own_db;
    return table;
}

void add_cable(Digest &digest) {
    Inputs inputs(3);
    const lvb_cable_table tables[] = {own_table(false), own_table(true)};
    for (int i = 0; i < 6000; ++i) {
        auto run = sized<lvb_cable_run>();
        auto loss = sized<lvb_cable_loss>();
        auto fault = sized<lvb_fault>();
        const std::uint32_t type = inputs.below(18);
        run.cable_type = type < 3 ? 0 : static_cast<std::int32_t>(type - 2);
        run.frequency_mhz = inputs.below(50) ? inputs.uniform(20.0, 3000.0) : inputs.argument();
        run.length_m = inputs.below(50) ? inputs.uniform(0.1, 200.0) : inputs.argument();
        run.connector_count = inputs.below(5);
        if (inputs.below(2)) run.connector_loss_db = inputs.uniform(0.01, 0.5);
        if (inputs.below(2)) {
            run.stated = LVB_STATED_TEMPERATURE;
            run.temperature_degc = inputs.uniform(-40.0, 80.0);
        }
        const lvb_status status = lvb_compute_cable_loss(&run, type < 2 ? &tables[type] : nullptr, &loss, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(loss.notes, loss.attenuation_db_per_100m, loss.cable_loss_db, loss.connectors_loss_db,
                           loss.loss_db);
        else add(digest, fault);
    }
}

struct Chain {
    lvb_gain_table gains = sized<lvb_gain_table>();
    lvb_cable_table cable = own_table(false);
    std::vector<lvb_stage> stages;
    lvb_link link = sized<lvb_link>();

    Chain(Inputs &inputs) {
        gains.row_count = 5;
        gains.frequency_mhz = own_mhz;
        gains.gain_db = gain_db;
        source(inputs);
        conducted(inputs);
        add(inputs, LVB_KIND_ANTENNA, -3.0, 12.0);
        if (inputs.below(2)) add(inputs, LVB_KIND_ALLOWANCE, -30.0, 0.0);
        add(inputs, LVB_KIND_AIR, -20.0, 0.0);
        add(inputs, LVB_KIND_ALLOWANCE, -30.0, 0.0);
        add(inputs, LVB_KIND_ANTENNA, -3.0, 12.0);
        conducted(inputs);
        if (inputs.below(5)) receiver(inputs);
        if (inputs.below(12) == 0) stages.pop_back();
        if (inputs.below(25) == 0)
            stages[inputs.below(static_cast<std::uint32_t>(stages.size()))].gain_db = inputs.any();
        link.stage_size = sizeof(lvb_stage);
        link.frequency_mhz = inputs.uniform(50.0, 1200.0);
        link.far_distance_m = inputs.uniform(1.0, 500.0);
        if (inputs.below(2)) link.near_distance_m = inputs.uniform(0.05, 1.0);
        if (inputs.below(2)) {
            link.stated = LVB_STATED_TEMPERATURE;
            link.temperature_degc = inputs.uniform(-40.0, 80.0);
        }
        link.stages = stages.data();
        link.stage_count = static_cast<std::uint32_t>(stages.size());
    }
    Chain(const Chain &) = delete;
    Chain &operator=(const Chain &) = delete;

  private:
    lvb_stage &add(Inputs &inputs, std::int32_t kind, double low, double high) {
        lvb_stage stage{};
        stage.kind = kind;
        stage.basis = static_cast<std::int32_t>(inputs.below(6));
        stage.gain_db = inputs.uniform(low, high);
        if (inputs.below(3)) stage.tolerance_db = inputs.uniform(0.0, 3.0);
        stages.push_back(stage);
        return stages.back();
    }
    void source(Inputs &inputs) { add(inputs, LVB_KIND_SOURCE, -3.0, 3.0).level_dbm = inputs.uniform(-10.0, 30.0); }
    void conducted(Inputs &inputs) {
        for (std::uint32_t n = inputs.below(5); n > 0; --n) {
            const std::uint32_t kind = inputs.below(4);
            if (kind == 0) {
                add(inputs, LVB_KIND_AMPLIFIER, 0.0, 25.0);
            } else if (kind == 1) {
                lvb_stage &stage = add(inputs, LVB_KIND_PASSIVE, -12.0, 0.0);
                if (inputs.below(2)) {
                    stage.gain_db = 0.0;
                    stage.gain_table = &gains;
                }
            } else {
                lvb_stage &stage = add(inputs, LVB_KIND_CABLE, -12.0, 0.0);
                stage.gain_db = 0.0;
                stage.length_m = inputs.uniform(0.5, 60.0);
                stage.connector_count = inputs.below(4);
                if (kind == 2) stage.cable_type = static_cast<std::int32_t>(1 + inputs.below(14));
                else stage.cable_table = &cable;
            }
        }
    }
    void receiver(Inputs &inputs) {
        lvb_stage &stage = add(inputs, LVB_KIND_RECEIVER, -3.0, 3.0);
        stage.stated = inputs.below(8) << 1; // floor, wanted band, ceiling
        if (stage.stated & LVB_STATED_FLOOR) stage.floor_dbm = inputs.uniform(-110.0, -80.0);
        if (stage.stated & LVB_STATED_WANTED) {
            stage.wanted_low_dbm = inputs.uniform(-80.0, -60.0);
            stage.wanted_high_dbm = inputs.uniform(-60.0, -40.0);
        }
        if (stage.stated & LVB_STATED_CEILING) stage.ceiling_dbm = inputs.uniform(-40.0, 0.0);
    }
};

void add(Digest &digest, const lvb_end &end) {
    digest.numbers(end.distance_m, end.level_dbm, end.worst_db, end.rss_db, end.margin_db, end.headroom_db,
                   end.from_middle_db, end.zone, end.zone_lowest, end.zone_highest);
}

void add_budgets(Digest &digest) {
    Inputs inputs(4);
    for (int i = 0; i < 3000; ++i) {
        const Chain chain(inputs);
        auto b = sized<lvb_budget>();
        auto fault = sized<lvb_fault>();
        std::vector<lvb_level> levels(chain.stages.size());
        const lvb_status status = lvb_compute_budget(&chain.link, &b, levels.data(), sizeof(lvb_level), &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(b.verdict, b.decided_by, b.reference, b.notes, b.entries, b.guesses, b.guesses_without_tolerance,
                       b.not_looked_up, b.estimated, b.handbook, b.data_sheet, b.measured, b.formula, b.decided_by_db,
                       b.eirp_dbm, b.eirp_worst_db, b.guess_worst_db, b.guess_share);
        add(digest, b.far_end);
        add(digest, b.near_end);
        for (const lvb_level &l : levels)
            digest.numbers(l.reference, l.basis, l.notes, l.far_change_db, l.far_level_dbm, l.far_worst_db,
                           l.far_rss_db, l.near_change_db, l.near_level_dbm, l.near_worst_db, l.near_rss_db);
    }
}

void add_grids(Digest &digest, std::int32_t instructions) {
    Inputs inputs(5);
    for (int i = 0; i < 40; ++i) {
        const Chain chain(inputs);
        std::vector<double> mhz, metres;
        for (int k = 0; k < 9; ++k) mhz.push_back(inputs.below(12) ? inputs.uniform(50.0, 1200.0) : inputs.argument());
        for (int k = 0; k < 150 + i; ++k)
            metres.push_back(inputs.below(60) ? inputs.uniform(0.1, 500.0) : inputs.argument());
        std::vector<double> scratch(2 * metres.size()), level(mhz.size() * metres.size());
        auto grid = sized<lvb_grid>();
        auto bad = sized<lvb_bad>();
        grid.end = i % 2;
        grid.instructions = instructions;
        grid.frequency_count = mhz.size();
        grid.distance_count = metres.size();
        grid.link = &chain.link;
        grid.frequency_mhz = mhz.data();
        grid.distance_m = metres.data();
        grid.scratch = scratch.data();
        grid.level_dbm = level.data();
        const lvb_status status = lvb_compute_grid(&grid, &bad, nullptr);
        digest.numbers(status, bad.count, bad.first);
        for (const double x : level) digest.number(x);
    }
}

// ---- What describes: ranges, the catalogue, names.

void add_descriptions(Digest &digest) {
    for (std::int32_t structure = 0; structure < 100; ++structure)
        for (std::int32_t kind = 0; kind < 10; ++kind)
            for (std::int32_t field = 0; field < 400; ++field) {
                auto range = sized<lvb_range>();
                const lvb_status status = lvb_describe_field(structure, kind, field, &range, nullptr);
                digest.number(status);
                if (status == LVB_OK) digest.numbers(range.required, range.minimum, range.maximum);
            }
    digest.number(lvb_cable_type_count());
    for (std::int32_t type = 0; type <= 15; ++type) {
        auto info = sized<lvb_cable_info>();
        digest.number(lvb_describe_cable(type, &info, nullptr));
        if (info.name == nullptr) continue;
        digest.numbers(info.row_count, info.lowest_mhz, info.highest_mhz, info.usable_lowest_mhz,
                       info.usable_highest_mhz, lvb_cable_type_from_name(info.name));
        digest.text(info.name);
        digest.text(info.description);
        auto row = sized<lvb_cable_row>();
        for (std::uint32_t i = 0; lvb_describe_cable_row(type, i, &row, nullptr) == LVB_OK; ++i) {
            digest.numbers(row.frequency_mhz, row.attenuation_db_per_100m);
            digest.text(row.source);
            digest.text(row.remark);
        }
    }
    for (std::int32_t i = -510; i < 400; ++i)
        for (const auto name : {lvb_status_name, lvb_field_name, lvb_formula_name, lvb_kind_name, lvb_basis_name,
                                lvb_reference_name, lvb_zone_name, lvb_verdict_name})
            digest.text(name(i));
}

// ---- Antennas and bodies.

const double around_deg[] = {-150.0, -60.0, 0.0, 45.0, 130.0};
const double around_db[] = {-18.0, -7.0, 0.0, -4.0, -22.0};
const double up_deg[] = {-90.0, -20.0, 10.0, 90.0};
const double up_db[] = {-30.0, -3.0, 0.0, -25.0};
const double body_db[] = {24.0, 9.0, 2.0, 5.0, 20.0};

struct Aerials {
    lvb_azimuth_cut around = sized<lvb_azimuth_cut>();
    lvb_elevation_cut up = sized<lvb_elevation_cut>();
    lvb_body_table body = sized<lvb_body_table>();

    Aerials() {
        around.row_count = body.row_count = 5;
        around.azimuth_deg = body.facing_deg = around_deg;
        around.gain_db = around_db;
        body.loss_db = body_db;
        up.row_count = 4;
        up.elevation_deg = up_deg;
        up.gain_db = up_db;
    }
    lvb_pattern pattern(Inputs &inputs) const {
        auto made = sized<lvb_pattern>();
        made.kind = static_cast<std::int32_t>(inputs.below(5));
        if (made.kind == LVB_PATTERN_ISOTROPIC || made.kind == LVB_PATTERN_CUTS)
            made.gain_dbi = inputs.uniform(-6.0, 9.0);
        if (made.kind == LVB_PATTERN_COSINE) {
            const std::uint32_t by = inputs.below(3); // by gain, by width, by both
            if (by != 1) made.gain_dbi = inputs.uniform(3.1, 20.0);
            if (by != 0) made.beam_width_deg = inputs.uniform(5.0, 170.0);
        }
        if (made.kind == LVB_PATTERN_CUTS) {
            const std::uint32_t which = inputs.below(3);
            if (which != 0) made.azimuth_cut = &around;
            if (which != 1) made.elevation_cut = &up;
        }
        if (made.kind == LVB_PATTERN_HELIX) {
            made.turns = inputs.uniform(3.0, 30.0);
            made.spacing_wavelengths = inputs.uniform(0.2, 0.3);
            made.circumference_wavelengths = inputs.uniform(0.75, 1.33);
        }
        if (made.kind >= LVB_PATTERN_COSINE && inputs.below(2)) made.front_to_back_db = inputs.uniform(5.0, 40.0);
        if (inputs.below(40) == 0) made.gain_dbi = inputs.any();
        return made;
    }
};

lvb_antenna any_antenna(Inputs &inputs, const lvb_pattern *pattern) {
    auto made = sized<lvb_antenna>();
    made.x_m = inputs.uniform(-40.0, 40.0);
    made.y_m = inputs.below(4) ? inputs.uniform(-40.0, 40.0) : 0.0;
    made.z_m = inputs.below(4) ? inputs.uniform(0.0, 9.0) : 0.0;
    made.azimuth_deg = inputs.below(4) ? inputs.uniform(-360.0, 360.0) : 90.0 * inputs.below(4);
    if (inputs.below(2)) made.tilt_deg = inputs.uniform(-90.0, 90.0);
    if (inputs.below(2)) made.roll_deg = inputs.uniform(-360.0, 360.0);
    if (inputs.below(2)) made.polarization_deg = inputs.uniform(-360.0, 360.0);
    if (inputs.below(2)) made.ellipticity = inputs.uniform(-1.0, 1.0);
    if (inputs.below(2)) made.largest_dimension_m = inputs.uniform(0.0, 3.0);
    if (inputs.below(4)) made.pattern = pattern;
    if (made.pattern != nullptr && pattern->kind == LVB_PATTERN_HALF_WAVE_DIPOLE && inputs.below(20))
        made.polarization_deg = made.ellipticity = 0.0;
    if (made.pattern != nullptr && pattern->kind == LVB_PATTERN_HELIX && inputs.below(20))
        made.ellipticity = inputs.below(2) ? 0.95 : -0.95;
    if (inputs.below(40) == 0) made.tilt_deg = inputs.any();
    return made;
}

void add_antennas(Digest &digest) {
    Inputs inputs(6);
    const Aerials aerials;
    for (int i = 0; i < 6000; ++i) {
        const lvb_pattern patterns[] = {aerials.pattern(inputs), aerials.pattern(inputs)};
        auto gain = sized<lvb_pattern_gain>();
        auto fault = sized<lvb_fault>();
        const double azimuth = inputs.below(30) ? inputs.uniform(-360.0, 360.0) : inputs.argument();
        const lvb_status asked =
            lvb_compute_pattern_gain(&patterns[0], azimuth, inputs.uniform(-90.0, 90.0), &gain, &fault);
        if (asked == LVB_OK) digest.numbers(gain.notes, gain.gain_dbi, gain.maximum_dbi);
        else add(digest, fault);

        const lvb_antenna transmit = any_antenna(inputs, &patterns[0]), receive = any_antenna(inputs, &patterns[1]);
        auto p = sized<lvb_pointing>();
        if (lvb_compute_pointing(&transmit, &receive, inputs.uniform(50.0, 3000.0), &p, &fault) == LVB_OK)
            digest.numbers(p.notes, p.distance_m, p.transmit_azimuth_deg, p.transmit_elevation_deg,
                           p.receive_azimuth_deg, p.receive_elevation_deg, p.transmit_gain_dbi, p.receive_gain_dbi,
                           p.polarization_loss_db, p.far_field_distance_m);
        else add(digest, fault);

        double loss = 0.0;
        digest.number(lvb_compute_body_loss(&aerials.body, inputs.uniform(-361.0, 361.0), &loss, &fault));
        digest.number(loss);
    }
}

void add_dressed_budgets(Digest &digest) {
    Inputs inputs(7);
    const Aerials aerials;
    for (int i = 0; i < 1500; ++i) {
        Chain chain(inputs);
        const lvb_pattern patterns[] = {aerials.pattern(inputs), aerials.pattern(inputs)};
        for (lvb_stage &stage : chain.stages) {
            if (stage.kind == LVB_KIND_ALLOWANCE && inputs.below(2)) {
                stage.gain_db = 0.0;
                stage.body_table = &aerials.body;
                stage.facing_deg = inputs.uniform(-360.0, 360.0);
            }
            if (stage.kind != LVB_KIND_ANTENNA) continue;
            stage.gain_db = inputs.below(40) ? 0.0 : stage.gain_db;
            stage.pattern = &patterns[inputs.below(2)];
            stage.far_azimuth_deg = inputs.uniform(-180.0, 180.0);
            stage.far_elevation_deg = inputs.uniform(-90.0, 90.0);
            stage.near_azimuth_deg = inputs.uniform(-180.0, 180.0);
            stage.near_elevation_deg = inputs.below(40) ? inputs.uniform(-90.0, 90.0) : inputs.argument();
        }
        auto b = sized<lvb_budget>();
        auto fault = sized<lvb_fault>();
        if (lvb_compute_budget(&chain.link, &b, nullptr, 0, &fault) != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(b.verdict, b.decided_by, b.notes, b.decided_by_db, b.eirp_dbm, b.eirp_worst_db);
        add(digest, b.far_end);
        add(digest, b.near_end);
    }
}

void add_allowances(Digest &digest) {
    auto info = sized<lvb_allowance_info>();
    for (std::uint32_t i = 0; lvb_describe_allowance(i, &info, nullptr) == LVB_OK; ++i) {
        digest.numbers(info.low_db, info.usual_db, info.high_db);
        for (const char *text : {info.subject, info.name, info.source, info.remark}) digest.text(text);
    }
    digest.number(lvb_allowance_count());
}

// ---- Other paths.

// A path of any model, mostly sound.
struct Way {
    lvb_edge edges[4] = {};
    lvb_path path = sized<lvb_path>();

    explicit Way(Inputs &inputs) {
        path.model = static_cast<std::int32_t>(inputs.below(6));
        const bool heights =
            path.model == LVB_PATH_TWO_RAY || (path.model != LVB_PATH_RADIATING_CABLE && inputs.below(2));
        if (heights) {
            path.transmit_height_m = inputs.uniform(0.5, 12.0);
            path.receive_height_m = inputs.uniform(0.5, 3.0);
            path.edge_count = inputs.below(5);
            path.edge_size = sizeof(lvb_edge);
            if (path.edge_count != 0) path.edges = edges;
            for (lvb_edge &edge : edges) edge = {inputs.uniform(0.5, 60.0), inputs.uniform(-1.0, 9.0)};
        }
        if (path.model == LVB_PATH_TWO_RAY) {
            path.relative_permittivity = inputs.uniform(1.0, 30.0);
            if (inputs.below(3)) path.conductivity_s_per_m = inputs.sized(12);
            path.polarization = static_cast<std::int32_t>(inputs.below(2));
        }
        if (path.model == LVB_PATH_LOG_DISTANCE) {
            path.exponent = inputs.uniform(1.5, 6.0);
            if (inputs.below(2)) path.reference_loss_db = inputs.uniform(20.0, 80.0);
            if (inputs.below(2)) path.reference_distance_m = inputs.uniform(0.5, 100.0);
        }
        if (path.model == LVB_PATH_INDOOR) path.power_loss_coefficient = inputs.uniform(18.0, 40.0);
        if (path.model == LVB_PATH_SITE_GENERAL) path.environment = static_cast<std::int32_t>(inputs.below(7));
        if (path.model == LVB_PATH_RADIATING_CABLE) {
            path.longitudinal_loss_db_per_100m = inputs.uniform(1.0, 20.0);
            path.coupling_loss_db = inputs.uniform(50.0, 90.0);
            if (inputs.below(2)) path.lateral_distance_m = inputs.uniform(0.5, 20.0);
            if (inputs.below(8)) path.exponent = inputs.uniform(0.5, 3.0);
        }
        const bool walled = path.model == LVB_PATH_INDOOR || path.model == LVB_PATH_SITE_GENERAL;
        if (inputs.below(walled ? 24 : 3) == 0) {
            path.wall_count = 1 + inputs.below(3);
            path.wall_loss_db = inputs.uniform(1.0, 15.0);
        }
        if (inputs.below(40) == 0) path.floor_loss_db = inputs.argument();
        if (path.model == LVB_PATH_LOG_DISTANCE || path.model == LVB_PATH_INDOOR) {
            if (inputs.below(2)) path.standard_deviation_db = inputs.uniform(0.1, 30.0);
        }
    }
    Way(const Way &) = delete;
    Way &operator=(const Way &) = delete;
};

void add_paths(Digest &digest, std::int32_t instructions) {
    Inputs inputs(6);
    for (int i = 0; i < 6000; ++i) {
        const Way way(inputs);
        auto loss = sized<lvb_path_loss>();
        auto fault = sized<lvb_fault>();
        const double mhz = inputs.below(20) ? inputs.uniform(400.0, 6000.0) : inputs.argument();
        const double metres = inputs.below(20) ? inputs.uniform(1.0, 80.0) : inputs.argument();
        const lvb_status status = lvb_compute_path_loss(&way.path, mhz, metres, &loss, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(loss.notes, loss.loss_db, loss.base_loss_db, loss.diffraction_loss_db, loss.obstacle_loss_db,
                           loss.free_space_loss_db, loss.standard_deviation_db, loss.break_point_m,
                           loss.grazing_angle_deg, loss.reflection_magnitude, loss.reflection_phase_deg);
        else add(digest, fault);
    }
    for (int i = 0; i < 60; ++i) {
        const Way way(inputs);
        lvb_stage stages[4] = {};
        stages[0].kind = LVB_KIND_SOURCE;
        stages[1].kind = stages[3].kind = LVB_KIND_ANTENNA;
        stages[2].kind = LVB_KIND_AIR;
        stages[2].path = &way.path;
        auto link = sized<lvb_link>();
        link.stages = stages;
        link.stage_count = 4;
        link.stage_size = sizeof(lvb_stage);
        link.frequency_mhz = inputs.uniform(400.0, 6000.0);
        link.far_distance_m = inputs.uniform(2.0, 40.0);
        link.near_distance_m = inputs.uniform(1.0, 2.0);
        auto budget = sized<lvb_budget>();
        auto fault = sized<lvb_fault>();
        digest.number(lvb_compute_budget(&link, &budget, nullptr, 0, &fault));
        add(digest, fault);
        digest.numbers(budget.path_standard_deviation_db, budget.far_end.level_dbm, budget.near_end.level_dbm);

        double mhz[3], metres[40], scratch[80], level[120] = {};
        for (double &f : mhz) f = inputs.uniform(400.0, 6000.0);
        for (double &d : metres) d = inputs.below(20) ? inputs.uniform(1.0, 80.0) : inputs.argument();
        auto grid = sized<lvb_grid>();
        auto bad = sized<lvb_bad>();
        grid.instructions = instructions;
        grid.frequency_count = 3;
        grid.distance_count = 40;
        grid.link = &link;
        grid.frequency_mhz = mhz;
        grid.distance_m = metres;
        grid.scratch = scratch;
        grid.level_dbm = level;
        const lvb_status status = lvb_compute_grid(&grid, &bad, nullptr);
        digest.numbers(status, bad.count, bad.first);
        for (const double x : level) digest.number(x);
    }
}

// ---- Fading.

// ---- Noise and linearity.

void dress(Inputs &inputs, lvb_stage &stage) {
    const bool active = stage.kind == LVB_KIND_AMPLIFIER || stage.kind == LVB_KIND_RECEIVER;
    if (!active && stage.kind != LVB_KIND_PASSIVE) return;
    if (active && inputs.below(12)) {
        stage.stated |= LVB_STATED_NOISE_FIGURE;
        stage.noise_figure_db = inputs.uniform(0.0, 20.0);
    }
    if (inputs.below(12)) {
        stage.stated |= LVB_STATED_INTERCEPT;
        stage.intercept_dbm = inputs.uniform(-20.0, 50.0);
    }
    if (inputs.below(12)) {
        stage.stated |= LVB_STATED_COMPRESSION;
        stage.compression_dbm = inputs.uniform(-40.0, 30.0);
    }
}

void add_noise(Digest &digest) {
    Inputs inputs(40);
    for (int i = 0; i < 3000; ++i) {
        Chain chain(inputs);
        for (lvb_stage &stage : chain.stages) dress(inputs, stage);
        auto conditions = sized<lvb_noise_conditions>();
        conditions.bandwidth_mhz = inputs.below(40) ? inputs.uniform(0.01, 10.0) : inputs.argument();
        if (inputs.below(3) == 0) conditions.antenna_temperature_k = inputs.uniform(10.0, 1e4);
        else if (inputs.below(2)) conditions.external_noise_figure_db = inputs.uniform(-20.0, 60.0);
        conditions.noise_at = inputs.below(4) ? 0 : static_cast<std::int32_t>(inputs.below(3));
        if (conditions.noise_at) conditions.noise_dbm = inputs.uniform(-120.0, -60.0);
        conditions.interference_at = static_cast<std::int32_t>(inputs.below(3));
        if (conditions.interference_at) conditions.interference_dbm = inputs.uniform(-120.0, -60.0);
        conditions.carriers = inputs.below(3) ? 2 + inputs.below(64) : 0;
        if (inputs.below(3)) {
            conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
            conditions.carrier_to_noise_db = inputs.uniform(0.0, 40.0);
        }
        auto n = sized<lvb_noise>();
        auto fault = sized<lvb_fault>();
        std::vector<lvb_noise_line> lines(chain.stages.size());
        const lvb_status status =
            lvb_compute_noise(&chain.link, &conditions, &n, lines.data(), sizeof(lvb_noise_line), &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(n.verdict, n.notes, n.first_stage, n.no_noise_figure_stage, n.no_intercept_stage,
                       n.compressing_stage, n.range_lowering_stage, n.gain_db, n.noise_figure_db, n.noise_temperature_k,
                       n.antenna_temperature_k, n.antenna_noise_dbm, n.receiver_noise_dbm, n.receiver_interference_dbm,
                       n.far_level_dbm, n.near_level_dbm, n.far_carrier_to_noise_db, n.near_carrier_to_noise_db,
                       n.far_carrier_to_noise_plus_interference_db, n.near_carrier_to_noise_plus_interference_db,
                       n.sensitivity_dbm, n.margin_db, n.input_intercept_dbm, n.output_intercept_dbm, n.compression_dbm,
                       n.compression_headroom_db, n.two_tone_dbm, n.products_dbm, n.spurious_free_range_db);
        for (const lvb_noise_line &l : lines)
            digest.numbers(l.notes, l.gain_db, l.stage_noise_figure_db, l.noise_figure_db, l.noise_temperature_k,
                           l.noise_dbm, l.far_carrier_to_noise_db, l.near_carrier_to_noise_db, l.input_intercept_dbm,
                           l.output_intercept_dbm, l.compression_dbm, l.compression_headroom_db, l.two_tone_dbm,
                           l.products_dbm, l.range_change_db, l.carrier_to_noise_change_db);
    }
}

// ---- Two systems.

void add_two_systems(Digest &digest) {
    Inputs inputs(9);
    for (int i = 0; i < 3000; ++i) {
        auto in = sized<lvb_neighbours>();
        auto out = sized<lvb_coexistence>();
        auto fault = sized<lvb_fault>();
        in.transmit_dbm = inputs.uniform(-20.0, 50.0);
        if (inputs.below(4)) {
            in.separation_m = inputs.below(50) ? inputs.uniform(0.1, 100.0) : inputs.argument();
            in.transmit_mhz = inputs.uniform(100.0, 6000.0);
            if (inputs.below(2)) in.receive_mhz = inputs.uniform(100.0, 6000.0);
            in.transmit_gain_dbi = inputs.uniform(-20.0, 10.0);
            in.receive_gain_dbi = inputs.uniform(-20.0, 10.0);
        } else in.coupling_loss_db = inputs.uniform(1.0, 100.0);
        in.receive_loss_db = inputs.uniform(0.0, 5.0);
        in.receive_filter_db = inputs.uniform(0.0, 40.0);
        if (inputs.below(3)) {
            in.stated |= LVB_STATED_BLOCKING;
            in.blocking_dbm = inputs.uniform(-50.0, 10.0);
            in.wanted_margin_db = inputs.uniform(0.0, 20.0);
        }
        if (inputs.below(2)) {
            in.stated |= LVB_STATED_TRANSMIT_NOISE;
            in.transmit_noise_dbm = inputs.uniform(-120.0, -40.0);
        } else {
            in.transmit_noise_dbc_per_hz = inputs.uniform(-170.0, -80.0);
            in.receiver_bandwidth_mhz = inputs.uniform(0.01, 10.0);
        }
        in.transmit_filter_db = inputs.uniform(0.0, 40.0);
        if (inputs.below(5)) {
            in.stated |= LVB_STATED_RECEIVER_NOISE;
            in.receiver_noise_dbm = inputs.uniform(-130.0, -80.0);
            if (inputs.below(2)) in.wanted_rise_db = inputs.uniform(0.01, 6.0);
        }
        const lvb_status status = lvb_compute_coexistence(&in, &out, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(out.notes, out.coupling_loss_db, out.noise_coupling_loss_db, out.blocker_dbm,
                           out.blocking_margin_db, out.noise_dbm, out.noise_rise_db, out.more_receive_filter_db,
                           out.more_transmit_filter_db, out.blocking_separation_m, out.noise_separation_m);
        else add(digest, fault);
    }
    for (int i = 0; i < 3000; ++i) {
        auto line = sized<lvb_coaxial_line>();
        auto out = sized<lvb_coaxial_properties>();
        auto fault = sized<lvb_fault>();
        line.frequency_mhz = inputs.uniform(1.0, 20000.0);
        line.inner_diameter_mm = inputs.uniform(0.1, 10.0);
        line.outer_diameter_mm = line.inner_diameter_mm * inputs.uniform(1.0, 6.0);
        if (inputs.below(2)) line.inner_conductivity = inputs.uniform(0.1, 1.1);
        if (inputs.below(2)) line.outer_conductivity = inputs.uniform(0.1, 1.1);
        if (inputs.below(2)) line.inner_factor = inputs.uniform(1.0, 2.0);
        if (inputs.below(2)) line.outer_factor = inputs.uniform(1.0, 4.0);
        if (inputs.below(4)) line.relative_permittivity = inputs.uniform(1.0, 4.0);
        if (inputs.below(4)) line.loss_tangent = inputs.uniform(0.0, 0.1);
        if (inputs.below(2)) {
            line.stated = LVB_STATED_TEMPERATURE;
            line.temperature_degc = inputs.uniform(-40.0, 80.0);
        }
        const lvb_status status = lvb_compute_coaxial_line(&line, &out, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(out.notes, out.impedance_ohm, out.velocity_factor, out.capacitance_pf_per_m,
                           out.conductor_db_per_100m, out.dielectric_db_per_100m, out.attenuation_db_per_100m,
                           out.cutoff_mhz);
        else add(digest, fault);
    }
}

// ---- Limits.

void add_limits(Digest &digest) {
    Inputs inputs(10);
    for (int i = 0; i < 1500; ++i) {
        const Chain chain(inputs);
        auto limit = sized<lvb_limit>();
        auto out = sized<lvb_limit_result>();
        auto fault = sized<lvb_fault>();
        limit.quantity = static_cast<std::int32_t>(inputs.below(6));
        limit.limit_dbm = inputs.uniform(-10.0, 40.0);
        if (inputs.below(2)) limit.lowest_mhz = inputs.uniform(50.0, 600.0);
        if (inputs.below(2)) limit.highest_mhz = inputs.uniform(500.0, 1200.0);
        const lvb_status status = lvb_check_limit(&chain.link, &limit, &out, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(out.verdict, out.level_dbm, out.worst_db, out.room_db, out.transmitter_output_dbm,
                           out.antenna_input_dbm, out.erp_dbm, out.eirp_dbm);
        else add(digest, fault);
    }
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        auto rule = sized<lvb_limit_rule>();
        digest.number(lvb_describe_limit_rule(i, &rule, nullptr));
        digest.numbers(rule.quantity, rule.lowest_mhz, rule.highest_mhz, rule.limit_dbm, rule.power_mw);
        for (const char *text : {rule.country, rule.citation, rule.edition, rule.remark}) digest.text(text);
    }
    for (std::int32_t exposure = 0; exposure < 4; ++exposure)
        for (std::int32_t audience = 0; audience < 4; ++audience)
            for (int i = 0; i < 200; ++i)
                digest.number(lvb_exposure_limit_w_per_m2(exposure, audience, inputs.uniform(0.0, 4000.0)));
    digest.number(lvb_limit_rule_count());
    digest.number(lvb_caution_count());
    for (std::int32_t i = -1; i < 10; ++i) {
        digest.text(lvb_quantity_name(i));
        digest.text(lvb_limit_verdict_name(i));
        digest.text(lvb_caution_text(static_cast<std::uint32_t>(i)));
    }
}

void add(Digest &digest, const lvb_extreme &extreme) {
    digest.numbers(extreme.value, extreme.frequency_mhz, extreme.distance_m);
}

void add_sweeps(Digest &digest) {
    Inputs inputs(66);
    for (int i = 0; i < 1500; ++i) {
        const Chain chain(inputs);
        auto sweep = sized<lvb_sweep>();
        auto out = sized<lvb_sweep_result>();
        auto fault = sized<lvb_fault>();
        std::vector<double> mhz(1 + inputs.below(6)), metres(inputs.below(6)), margins(mhz.size()),
            headrooms(mhz.size());
        for (double &f : mhz) f = inputs.below(60) ? inputs.uniform(100.0, 900.0) : inputs.argument();
        for (double &d : metres) d = inputs.below(60) ? inputs.uniform(1.0, 300.0) : inputs.argument();
        sweep.link = &chain.link;
        sweep.frequency_count = mhz.size();
        sweep.distance_count = metres.size();
        if (inputs.below(2)) sweep.frequency_mhz = mhz.data();
        else sweep.first_mhz = inputs.uniform(100.0, 900.0), sweep.last_mhz = inputs.uniform(100.0, 900.0);
        if (inputs.below(2)) sweep.distance_m = metres.data();
        if (inputs.below(2)) sweep.lowest_margin_db = margins.data(), sweep.lowest_headroom_db = headrooms.data();
        const lvb_status status = lvb_compute_sweep(&sweep, &out, &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(out.verdict, out.decided_by, out.notes, out.decided_by_db, out.far_worst_db, out.near_worst_db);
        for (const lvb_extreme *extreme :
             {&out.lowest_margin, &out.highest_margin, &out.lowest_headroom, &out.highest_headroom, &out.lowest_level,
              &out.highest_level, &out.lowest_eirp, &out.highest_eirp})
            add(digest, *extreme);
        for (const double margin : margins) digest.number(margin);
        for (const double headroom : headrooms) digest.number(headroom);
    }
}

// ---- Sweeps, maps and walks.

// A site with something of everything, mostly sound.
struct Site {
    lvb_stage stages[4][6] = {};
    lvb_link links[4];
    lvb_antenna antennas[4];
    lvb_pattern patterns[4];
    lvb_path paths[4];
    lvb_site_antenna lent[4];
    double corners[2][2][5], facing_deg[3] = {-90.0, 20.0, 180.0}, loss_db[3] = {7.0, 1.0, 19.0};
    lvb_area areas[2];
    lvb_screen screens[2];
    lvb_body_table body = sized<lvb_body_table>();
    lvb_antenna pack = sized<lvb_antenna>();
    lvb_site site = sized<lvb_site>();

    explicit Site(Inputs &inputs) {
        for (int i = 0; i < 4; ++i) add(inputs, i);
        for (int i = 0; i < 2; ++i) {
            for (double &x : corners[i][0]) x = inputs.uniform(-9.0, 9.0);
            for (double &y : corners[i][1]) y = inputs.uniform(-9.0, 9.0);
            areas[i] = {3 + inputs.below(3), 0, corners[i][0], corners[i][1]};
            screens[i] = {inputs.uniform(-9.0, 9.0),
                          inputs.uniform(-9.0, 9.0),
                          inputs.uniform(-9.0, 9.0),
                          inputs.uniform(-9.0, 9.0),
                          inputs.below(2) ? 0.0 : inputs.uniform(0.1, 1.0),
                          inputs.uniform(1.1, 4.0),
                          inputs.below(2) ? 0.0 : inputs.uniform(1.0, 40.0)};
        }
        site.direction = static_cast<std::int32_t>(inputs.below(2));
        site.combine = static_cast<std::int32_t>(inputs.below(2));
        site.antennas = lent;
        site.antenna_count = 1 + inputs.below(4);
        site.antenna_size = sizeof(lvb_site_antenna);
        site.area_count = inputs.below(3);
        site.areas = site.area_count != 0 ? areas : nullptr;
        site.area_size = sizeof(lvb_area);
        site.screen_count = inputs.below(3);
        site.screens = site.screen_count != 0 ? screens : nullptr;
        site.screen_size = sizeof(lvb_screen);
        site.pack_height_m = inputs.uniform(0.5, 2.0);
        body.row_count = 3;
        body.facing_deg = facing_deg;
        body.loss_db = loss_db;
        if (inputs.below(3) == 0) {
            site.body_table = &body;
            site.facing = static_cast<std::int32_t>(inputs.below(4));
        }
        pack.azimuth_deg = inputs.uniform(-180.0, 180.0);
        pack.roll_deg = inputs.uniform(-180.0, 180.0);
        pack.ellipticity = inputs.below(2) ? 0.0 : inputs.uniform(-1.0, 1.0);
        if (inputs.below(3) == 0) {
            site.pack_antenna = &pack;
            site.facing = static_cast<std::int32_t>(inputs.below(4));
            if (inputs.below(2) == 0) site.most_polarization_loss_db = inputs.uniform(6.0, 30.0);
        }
        if (inputs.below(30) == 0) site.facing_x_m = inputs.argument();
    }
    Site(const Site &) = delete;
    Site &operator=(const Site &) = delete;

  private:
    void add(Inputs &inputs, int i) {
        const std::int32_t kinds[6] = {LVB_KIND_SOURCE,    LVB_KIND_ANTENNA, LVB_KIND_AIR,
                                       LVB_KIND_ALLOWANCE, LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
        for (int k = 0; k < 6; ++k) stages[i][k].kind = kinds[k];
        stages[i][0].level_dbm = inputs.uniform(-10.0, 20.0);
        stages[i][1].gain_db = inputs.uniform(-3.0, 9.0);
        stages[i][3].gain_db = inputs.below(2) ? -20.0 : inputs.uniform(-30.0, 0.0);
        stages[i][5].stated = LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING;
        stages[i][5].floor_dbm = -70.0;
        stages[i][5].wanted_low_dbm = -60.0;
        stages[i][5].wanted_high_dbm = -45.0;
        stages[i][5].ceiling_dbm = -20.0;
        paths[i] = sized<lvb_path>();
        paths[i].model = LVB_PATH_LOG_DISTANCE;
        paths[i].exponent = inputs.uniform(1.6, 4.0);
        if (inputs.below(6) == 0) stages[i][2].path = &paths[i];
        links[i] = sized<lvb_link>();
        links[i].stages = stages[i];
        links[i].stage_count = 6;
        links[i].stage_size = sizeof(lvb_stage);
        links[i].frequency_mhz = 640.0;
        patterns[i] = sized<lvb_pattern>();
        patterns[i].kind = static_cast<std::int32_t>(inputs.below(3));
        if (patterns[i].kind == LVB_PATTERN_COSINE)
            patterns[i].beam_width_deg = inputs.below(2) ? 90.0 : inputs.uniform(20.0, 150.0);
        antennas[i] = sized<lvb_antenna>();
        antennas[i].x_m = inputs.uniform(-12.0, 12.0);
        antennas[i].y_m = inputs.below(60) ? inputs.uniform(-12.0, 12.0) : inputs.argument();
        antennas[i].z_m = inputs.uniform(1.0, 5.0);
        antennas[i].azimuth_deg = inputs.uniform(-180.0, 180.0);
        antennas[i].tilt_deg = inputs.uniform(-40.0, 40.0);
        if (inputs.below(4)) antennas[i].pattern = &patterns[i];
        lent[i] = {&antennas[i], &links[i]};
    }
};

void add_map(Digest &digest, const Site &site, std::int32_t fading, std::int32_t instructions) {
    static double level[900], margin[900], headroom[900], outage[900];
    static std::int32_t zone[900], serving[900];
    auto map = sized<lvb_map>();
    auto summary = sized<lvb_map_summary>();
    auto fault = sized<lvb_fault>();
    map.instructions = instructions;
    map.fading = fading;
    map.fading_parameter = fading > LVB_FADING_RAYLEIGH ? 3.5 : 0.0;
    map.site = &site.site;
    map.column_count = 150;
    map.row_count = 6;
    map.x_m = -9.0;
    map.y_m = -8.0;
    map.step_x_m = 0.13;
    map.step_y_m = 2.9;
    map.level_dbm = level;
    map.margin_db = margin;
    map.headroom_db = headroom;
    map.outage = fading != LVB_FADING_NONE ? outage : nullptr;
    map.zone = zone;
    map.serving = serving;
    const lvb_status status = lvb_compute_map(&map, &summary, &fault);
    digest.number(status);
    if (status != LVB_OK) return add(digest, fault);
    for (int i = 0; i < 900; ++i) {
        digest.numbers(level[i], margin[i], headroom[i], zone[i], serving[i]);
        if (map.outage != nullptr) digest.number(outage[i]);
    }
    digest.numbers(summary.points, summary.outside, summary.unmodelled, summary.dropout, summary.low, summary.wanted,
                   summary.high, summary.overload, summary.overloaded, summary.worst_row, summary.worst_column,
                   summary.hottest_row, summary.hottest_column, summary.worst_serving, summary.worst_margin_db,
                   summary.hottest_headroom_db);
}

void add_walk(Digest &digest, Inputs &inputs, const Site &site, std::int32_t instructions) {
    double x[4], y[4];
    for (int i = 0; i < 4; ++i) {
        x[i] = inputs.below(60) ? inputs.uniform(-10.0, 10.0) : inputs.argument();
        y[i] = inputs.uniform(-10.0, 10.0);
    }
    auto walk = sized<lvb_walk>();
    auto result = sized<lvb_walk_result>();
    auto fault = sized<lvb_fault>();
    walk.instructions = instructions;
    walk.site = &site.site;
    walk.corner_count = 4;
    walk.x_m = x;
    walk.y_m = y;
    walk.speed_m_per_s = 1.3;
    walk.step_m = inputs.uniform(0.1, 2.0);
    walk.fading = static_cast<std::int32_t>(inputs.below(LVB_FADING_SUZUKI + 1));
    walk.fading_parameter = walk.fading > LVB_FADING_RAYLEIGH ? inputs.uniform(0.5, 9.0) : 0.0;
    std::uint64_t points = 0;
    digest.number(lvb_walk_point_count(&walk, &points, nullptr));
    digest.number(points);
    const lvb_status status = lvb_compute_walk(&walk, &result, &fault);
    digest.number(status);
    if (status != LVB_OK) return add(digest, fault);
    digest.numbers(result.length_m, result.under_floor_s, result.longest_under_floor_s, result.longest_under_floor_m,
                   result.over_ceiling_s, result.longest_over_ceiling_m, result.worst_level_dbm, result.worst_m,
                   result.hottest_headroom_db, result.hottest_m, result.mean_outage, result.expected_under_floor_s);
}

void add_placements(Digest &digest, Inputs &inputs, Site &site, std::int32_t instructions) {
    static double scratch[12 * 256];
    lvb_antenna rail[3];
    lvb_placement placements[3];
    std::uint32_t found = 0;
    auto place = sized<lvb_place>();
    auto fault = sized<lvb_fault>();
    site.site.antenna_count = inputs.below(2);
    if (site.site.antenna_count == 0) site.site.antennas = nullptr;
    if (lvb_spread_on_rail(&site.antennas[3], 3.0, -9.0, 2.0, 3, rail, nullptr) == LVB_OK) site.antennas[2] = rail[1];
    place.instructions = instructions;
    place.place_count = 1 + inputs.below(2);
    place.candidate_count = 4;
    place.candidate_size = sizeof(lvb_site_antenna);
    place.site = &site.site;
    place.candidates = site.lent;
    place.column_count = 20;
    place.row_count = 10;
    place.x_m = place.y_m = -8.0;
    place.step_x_m = 0.9;
    place.step_y_m = 1.7;
    place.scratch = scratch;
    digest.number(lvb_place_scratch_count(&place, &place.scratch_count, nullptr));
    digest.number(place.scratch_count);
    const lvb_status status = lvb_compute_placements(&place, placements, sizeof placements[0], 3, &found, &fault);
    digest.numbers(status, found);
    if (status != LVB_OK) return add(digest, fault);
    for (std::uint32_t i = 0; i < found; ++i)
        digest.numbers(placements[i].first, placements[i].second, placements[i].worst_margin_db,
                       placements[i].hottest_headroom_db);
}

void add_sites(Digest &digest, std::int32_t instructions) {
    Inputs inputs(60);
    for (int i = 0; i < 300; ++i) {
        Site site(inputs);
        add_map(digest, site, static_cast<std::int32_t>(inputs.below(6)), instructions);
        add_walk(digest, inputs, site, instructions);
        add_placements(digest, inputs, site, instructions);
    }
}

// Links that share a stock; every slot takes any item.
void add_choices(Digest &digest) {
    Inputs inputs(70);
    for (int round = 0; round < 60; ++round) {
        const std::uint32_t links = 1 + inputs.below(2), slots_each = 2 + inputs.below(3), gear = 4 + inputs.below(6);
        const bool steps = inputs.below(2) != 0;
        std::vector<lvb_stage> stages(gear);
        std::vector<lvb_item> items(gear);
        std::vector<std::uint32_t> list;
        for (std::uint32_t i = 0; i < gear; ++i) {
            const bool amplifier = inputs.below(4) == 0;
            stages[i].kind = amplifier ? LVB_KIND_AMPLIFIER : LVB_KIND_PASSIVE;
            stages[i].gain_db = inputs.uniform(amplifier ? 0.0 : -9.0, amplifier ? 9.0 : 0.0);
            if (steps) stages[i].gain_db = static_cast<double>(static_cast<int>(stages[i].gain_db * 2.0)) / 2.0;
            stages[i].tolerance_db = inputs.uniform(0.0, 1.0);
            items[i].stage = &stages[i];
            items[i].cost = inputs.below(40);
            items[i].count = inputs.below(4);
            if (amplifier) {
                stages[i].stated = LVB_STATED_NOISE_FIGURE;
                stages[i].noise_figure_db = inputs.uniform(1.0, 8.0);
            }
            list.push_back(i);
        }
        std::vector<std::vector<lvb_stage>> chains(links);
        std::vector<lvb_link> lent(links);
        std::vector<lvb_need> needs(links);
        std::vector<lvb_slot> slots;
        for (std::uint32_t l = 0; l < links; ++l) {
            std::vector<lvb_stage> &chain = chains[l];
            const auto add = [&](std::int32_t kind) -> lvb_stage & {
                chain.push_back({});
                chain.back().kind = kind;
                return chain.back();
            };
            const auto reserve = [&] {
                slots.push_back({l, static_cast<std::uint32_t>(chain.size()), gear, 0, list.data()});
                add(LVB_KIND_PASSIVE);
            };
            add(LVB_KIND_SOURCE).level_dbm = 15.0;
            for (std::uint32_t i = 0; i < slots_each / 2; ++i) reserve();
            add(LVB_KIND_ANTENNA);
            add(LVB_KIND_AIR);
            add(LVB_KIND_ANTENNA);
            for (std::uint32_t i = slots_each / 2; i < slots_each; ++i) reserve();
            lvb_stage &end = add(LVB_KIND_RECEIVER);
            end.stated = LVB_STATED_FLOOR | LVB_STATED_CEILING;
            end.floor_dbm = inputs.uniform(-60.0, -40.0);
            end.ceiling_dbm = end.floor_dbm + inputs.uniform(2.0, 25.0);
            lent[l] = sized<lvb_link>();
            lent[l].stages = chain.data();
            lent[l].stage_count = static_cast<std::uint32_t>(chain.size());
            lent[l].stage_size = sizeof(lvb_stage);
            lent[l].frequency_mhz = 600.0;
            lent[l].far_distance_m = inputs.uniform(10.0, 60.0);
            needs[l].link = &lent[l];
            needs[l].worst_case = inputs.below(4);
            if (inputs.below(2) != 0) {
                needs[l].stated = LVB_STATED_EIRP_LIMIT;
                needs[l].eirp_limit_dbm = inputs.uniform(5.0, 20.0);
            }
            if (inputs.below(2) != 0) {
                needs[l].noise_figure_limit_db = inputs.uniform(5.0, 25.0);
                end.stated |= LVB_STATED_NOISE_FIGURE;
                end.noise_figure_db = 6.0;
            }
        }
        auto choice = sized<lvb_choice>();
        choice.need_count = links;
        choice.need_size = sizeof(lvb_need);
        choice.item_count = gear;
        choice.item_size = sizeof(lvb_item);
        choice.slot_count = static_cast<std::uint32_t>(slots.size());
        choice.slot_size = sizeof(lvb_slot);
        choice.stage_size = sizeof(lvb_stage);
        choice.set_count = 5;
        choice.miss_size = sizeof(lvb_miss);
        choice.needs = needs.data();
        choice.items = items.data();
        choice.slots = slots.data();
        choice.step_limit = 1 + inputs.below(400);
        auto room = sized<lvb_choice_scratch>();
        digest.number(lvb_compute_choice_scratch(&choice, &room, nullptr));
        std::vector<unsigned char> scratch(static_cast<std::size_t>(room.least_bytes) + 65536);
        std::vector<std::uint32_t> sets(5 * slots.size());
        std::vector<std::uint64_t> costs(5);
        std::vector<lvb_miss> misses(links);
        choice.scratch = scratch.data();
        choice.scratch_bytes = scratch.size();
        choice.sets = sets.data();
        choice.costs = costs.data();
        choice.misses = misses.data();
        auto chosen = sized<lvb_chosen>();
        digest.number(lvb_compute_choice(&choice, &chosen, nullptr));
        digest.numbers(chosen.outcome, chosen.set_count, chosen.cost, chosen.lower_bound, chosen.steps);
        for (const std::uint32_t item : sets) digest.number(item);
        for (const std::uint64_t cost : costs) digest.number(cost);
        for (const lvb_miss &miss : misses)
            digest.numbers(miss.far_alone_db, miss.near_alone_db, miss.eirp_alone_db, miss.noise_alone_db,
                           miss.far_besides_db, miss.near_besides_db, miss.eirp_besides_db, miss.noise_besides_db);
    }
    for (std::int32_t outcome = -1; outcome < 8; ++outcome) digest.text(lvb_outcome_name(outcome));
}

// ---- Locate.

void add_locate(Digest &digest) {
    Inputs inputs(77);
    for (int i = 0; i < 1500; ++i) {
        const Chain chain(inputs);
        const auto count = static_cast<std::uint32_t>(chain.stages.size());
        std::vector<lvb_reading> readings(inputs.below(8));
        for (lvb_reading &reading : readings) {
            reading.stage = inputs.below(6) ? inputs.below(5) : inputs.below(count + 1);
            if (inputs.below(3) == 0) reading.stage = count - 1;
            reading.level_dbm = inputs.below(60) ? inputs.uniform(-110.0, 30.0) : inputs.argument();
            if (inputs.below(3) == 0) reading.uncertainty_db = inputs.uniform(0.05, 2.0);
            if (inputs.below(20) == 0) reading.uncertainty_db = HUGE_VAL;
            if (inputs.below(3) == 0 && reading.stage == count - 1) reading.distance_m = inputs.uniform(1.0, 300.0);
        }
        auto locate = sized<lvb_locate>();
        locate.link = &chain.link;
        locate.readings = readings.data();
        locate.reading_count = static_cast<std::uint32_t>(readings.size());
        locate.reading_size = sizeof(lvb_reading);
        locate.uncertainty_db = inputs.uniform(0.1, 1.0);
        if (inputs.below(2)) locate.fault_probability = inputs.uniform(0.01, 0.99);
        if (inputs.below(2)) locate.fault_spread_db = inputs.uniform(1.0, 30.0);
        auto r = sized<lvb_locate_result>();
        auto fault = sized<lvb_fault>();
        std::vector<lvb_suspect> suspects(count);
        const lvb_status status = lvb_locate_fault(&locate, &r, suspects.data(), sizeof(lvb_suspect), &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(r.consistent, r.reading_count, r.stage, r.span_first, r.span_last, r.next_stage, r.chi_square,
                       r.p_value, r.none_probability, r.probability, r.span_probability, r.fault_db,
                       r.standard_deviation_db, r.expected_bits, r.fault_p_value);
        for (const lvb_suspect &s : suspects)
            digest.numbers(s.span, s.probability, s.fault_db, s.standard_deviation_db, s.expected_bits);
    }
}

// ---- How sure.

void add_trials(Digest &digest, std::int32_t instructions) {
    Inputs inputs(82);
    for (int i = 0; i < 400; ++i) {
        Chain chain(inputs);
        const std::size_t count = chain.stages.size();
        std::vector<lvb_spread> spreads(inputs.below(3) ? count : 0);
        for (lvb_stage &stage : chain.stages) stage.tolerance_db = inputs.below(3) ? inputs.uniform(0.0, 6.0) : 0.0;
        for (lvb_spread &spread : spreads) {
            spread.law = static_cast<std::int32_t>(inputs.below(4));
            if (spread.law == LVB_LAW_NORMAL && inputs.below(2)) spread.coverage_factor = inputs.uniform(1.0, 10.0);
        }
        auto trials = sized<lvb_trials>();
        trials.instructions = instructions;
        trials.link = &chain.link;
        trials.spreads = spreads.data();
        trials.spread_count = static_cast<std::uint32_t>(spreads.size());
        trials.spread_size = sizeof(lvb_spread);
        trials.fading = static_cast<std::int32_t>(inputs.below(4));
        if (trials.fading == LVB_FADING_RICE) trials.rice_factor_db = inputs.uniform(-20.0, 40.0);
        if (trials.fading == LVB_FADING_NAKAGAMI) trials.nakagami_shape = inputs.uniform(0.5, 8.0);
        if (inputs.below(2)) trials.shadowing_db = inputs.uniform(0.0, 9.0);
        trials.seed = std::uint64_t{inputs.below(1u << 31)} << inputs.below(33);
        trials.first_trial = std::uint64_t{inputs.below(1u << 31)} << inputs.below(21);
        trials.trial_count = 1 + inputs.below(400);
        std::vector<double> far(trials.trial_count), near(trials.trial_count);
        trials.far_dbm = far.data();
        trials.near_dbm = near.data();
        auto tally = sized<lvb_tally>();
        auto fault = sized<lvb_fault>();
        const lvb_status status = lvb_compute_trials(&trials, &tally, &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        for (const double level : far) digest.number(level);
        for (const double level : near) digest.number(level);
        auto s = sized<lvb_sureness>();
        digest.number(lvb_compute_sureness(&tally, 1, sizeof tally, &s, nullptr));
        digest.numbers(s.inside_probability, s.inside_error, s.far_below_probability, s.far_below_error,
                       s.far_above_probability, s.far_above_error, s.near_below_probability, s.near_below_error,
                       s.near_above_probability, s.near_above_error, s.far_mean_dbm, s.far_mean_error_db,
                       s.far_standard_deviation_db, s.near_mean_dbm, s.near_mean_error_db,
                       s.near_standard_deviation_db);
        lvb_quantile quantiles[] = {{0.025, 0.0, 0.0}, {0.5, 0.0, 0.0}, {inputs.uniform(0.0, 1.0), 0.0, 0.0}};
        digest.number(lvb_compute_quantiles(far.data(), far.size(), quantiles, 3, sizeof quantiles[0], nullptr));
        for (const lvb_quantile &q : quantiles) digest.numbers(q.level_dbm, q.error_db);
    }
}

// ---- Solve, rank, compare.

void add_solutions(Digest &digest) {
    Inputs inputs(86);
    const std::int32_t of_link[] = {LVB_FIELD_FREQUENCY_MHZ, LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M,
                                    LVB_FIELD_TEMPERATURE_DEGC};
    const std::int32_t of_stage[] = {LVB_FIELD_LEVEL_DBM,         LVB_FIELD_GAIN_DB,    LVB_FIELD_TOLERANCE_DB,
                                     LVB_FIELD_LENGTH_M,          LVB_FIELD_FLOOR_DBM,  LVB_FIELD_WANTED_LOW_DBM,
                                     LVB_FIELD_CONNECTOR_LOSS_DB, LVB_FIELD_CEILING_DBM};
    auto ground = sized<lvb_path>();
    ground.model = LVB_PATH_TWO_RAY;
    ground.transmit_height_m = 3.0;
    ground.receive_height_m = 1.5;
    ground.relative_permittivity = 5.0;
    for (int i = 0; i < 2500; ++i) {
        Chain chain(inputs);
        if (inputs.below(3) == 0)
            for (lvb_stage &stage : chain.stages)
                if (stage.kind == LVB_KIND_AIR) stage.path = &ground;
        auto in = sized<lvb_solve>();
        auto out = sized<lvb_solution>();
        auto fault = sized<lvb_fault>();
        in.structure = inputs.below(3) ? LVB_STRUCT_STAGE : LVB_STRUCT_LINK;
        const bool stage = in.structure == LVB_STRUCT_STAGE;
        in.field = stage ? of_stage[inputs.below(8)] : of_link[inputs.below(4)];
        if (stage) in.stage_index = inputs.below(static_cast<std::uint32_t>(chain.stages.size()));
        in.goal = 1 + static_cast<std::int32_t>(inputs.below(8));
        if (in.goal <= 2) in.tolerances = static_cast<std::int32_t>(inputs.below(3));
        in.link = &chain.link;
        in.wanted = inputs.below(40) ? inputs.uniform(-90.0, 40.0) : inputs.argument();
        const lvb_status status = lvb_compute_solution(&in, &out, &fault);
        digest.number(status);
        if (status == LVB_OK)
            digest.numbers(out.outcome, out.value, out.reached, out.missing_db, out.entered, out.reached_entered,
                           out.lowest, out.highest, out.bound_structure, out.bound_field, out.bound_stage);
        else add(digest, fault);
    }
}

void add_rankings(Digest &digest) {
    Inputs inputs(88);
    for (int i = 0; i < 1000; ++i) {
        const Chain chain(inputs);
        auto r = sized<lvb_ranking>();
        auto fault = sized<lvb_fault>();
        std::vector<lvb_contribution> lines(chain.stages.size());
        const lvb_status status = lvb_compute_ranking(&chain.link, &r, lines.data(), sizeof(lvb_contribution), &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(r.decided_by, r.loss_stage, r.variance_stage, r.help_stage, r.measure_stage, r.look_up_stage,
                       r.decided_by_db, r.help_db, r.measure_worst_db, r.measure_rss_db, r.look_up_change_db, r.loss_db,
                       r.gain_db, r.db_per_mhz, r.db_per_degc);
        for (const lvb_contribution &l : lines)
            digest.numbers(l.loss_rank, l.variance_rank, l.help_rank, l.basis, l.far_change_db, l.near_change_db,
                           l.loss_share, l.variance_share, l.worst_share, l.help_db, l.db_per_db, l.db_per_m,
                           l.db_per_connector, l.db_per_connector_db, l.db_per_degc, l.far_db_per_mhz,
                           l.near_db_per_mhz, l.far_db_per_distance_m, l.near_db_per_distance_m);
    }
}

void add_comparisons(Digest &digest) {
    Inputs inputs(90);
    const char *const labels[] = {nullptr, "", "one", "two", "three"};
    for (int i = 0; i < 1000; ++i) {
        Chain first(inputs), second(inputs);
        for (Chain *chain : {&first, &second})
            for (lvb_stage &stage : chain->stages) stage.label = labels[inputs.below(5)];
        std::vector<std::uint8_t> scratch(first.stages.size() * second.stages.size());
        std::vector<lvb_pair> pairs(first.stages.size() + second.stages.size());
        auto in = sized<lvb_compare>();
        auto out = sized<lvb_comparison>();
        auto fault = sized<lvb_fault>();
        in.pair_size = sizeof(lvb_pair);
        in.first = &first.link;
        in.second = &second.link;
        in.scratch_bytes = scratch.size();
        in.scratch = scratch.data();
        in.pairs = pairs.data();
        const lvb_status status = lvb_compute_comparison(&in, &out, &fault);
        digest.number(status);
        if (status != LVB_OK) {
            add(digest, fault);
            continue;
        }
        digest.numbers(out.pair_count, out.by_label, out.by_kind, out.first_only, out.second_only, out.first_verdict,
                       out.second_verdict, out.largest_pair, out.largest_db, out.far_level_db, out.near_level_db,
                       out.margin_db, out.headroom_db, out.far_worst_db, out.near_worst_db, out.eirp_db);
        for (std::uint32_t k = 0; k < out.pair_count; ++k)
            digest.numbers(pairs[k].first_stage, pairs[k].second_stage, pairs[k].matched,
                           pairs[k].far_change_difference_db, pairs[k].near_change_difference_db,
                           pairs[k].tolerance_difference_db, pairs[k].far_level_difference_db,
                           pairs[k].near_level_difference_db);
    }
}

std::uint64_t digest_with(std::int32_t instructions) {
    Digest digest;
    add_scalars(digest);
    add_columns(digest, instructions);
    add_cable(digest);
    add_budgets(digest);
    add_grids(digest, instructions);
    add_descriptions(digest);
    // antennas and bodies
    add_antennas(digest);
    add_dressed_budgets(digest);
    add_allowances(digest);
    // other paths
    add_paths(digest, instructions);
    // fading
    // noise and linearity
    add_noise(digest);
    // two systems
    add_two_systems(digest);
    // limits
    add_limits(digest);
    // sweeps, maps and walks
    add_sweeps(digest);
    add_sites(digest, instructions);
    // choose
    add_choices(digest);
    // locate
    add_locate(digest);
    // how sure
    add_trials(digest, instructions);
    // solve, rank, compare
    add_solutions(digest);
    add_rankings(digest);
    add_comparisons(digest);
    return digest.value();
}

} // namespace

int main(int count, char **arguments) {
    char wanted[17] = "";
    if (count > 1) {
        std::FILE *file = std::fopen(arguments[1], "r");
        if (file == nullptr || std::fscanf(file, "%16s", wanted) != 1)
            return std::fprintf(stderr, "cannot read %s\n", arguments[1]), 2;
        std::fclose(file);
    }
    const std::int32_t asked = lvb_best_instructions();
    int different = 0;
    for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= (asked & 255); ++set) {
        char got[17];
        std::snprintf(got, sizeof got, "%016llx", static_cast<unsigned long long>(digest_with(set)));
        const bool same = count < 2 || std::strcmp(got, wanted) == 0;
        std::printf("%s  instructions %d%s\n", got, static_cast<int>(set), same ? "" : "  DIFFERS");
        if (!same) different = 1;
    }
    return different;
}
