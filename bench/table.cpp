// levelbook-table: one table of levelbook's time against others' for the same work, all measured in one run.
//
// Each contender does its work many times in turn with all others, and its best time counts: on a busy machine every
// contender finds a quiet moment. Before that it is checked that all contenders of a row give the same results.
#include "chains.hpp"
#include "plain.hpp"
#include "sites.hpp"
#include "sleef.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <deque>
#include <functional>
#include <limits>
#include <map>
#include <memory>
#include <new>
#include <span>
#include <string>

namespace {

constexpr std::size_t in_cache = 4096, out_of_cache = std::size_t{1} << 22, line_length = 1000;
constexpr int rounds = 24, rounds_of_python = 8;

[[noreturn]] void fail(const std::string &why) {
    std::fprintf(stderr, "levelbook-table: %s\n", why.c_str());
    std::exit(1);
}

void accept(lvb_status status) {
    if (status != LVB_OK) fail(std::string("levelbook refused: ") + lvb_status_name(status));
}

// Doubles that begin at a cache line.
class Values {
  public:
    explicit Values(std::size_t count)
        : at_(static_cast<double *>(::operator new (count * sizeof(double), std::align_val_t{64}))),
          all_(at_.get(), count) {
        std::ranges::fill(all_, 0.0);
    }
    static Values spread(double low, double high, std::size_t count) {
        Values values(count);
        for (std::size_t i = 0; i < count; ++i)
            values.all_[i] = low + (high - low) * std::fmod(static_cast<double>(i) * 0.6180339887498949, 1.0);
        return values;
    }
    double *data() const { return all_.data(); }
    std::size_t size() const { return all_.size(); }
    std::span<const double> all() const { return all_; }

  private:
    struct Release {
        void operator()(double *at) const { ::operator delete (at, std::align_val_t{64}); }
    };
    std::unique_ptr<double, Release> at_;
    std::span<double> all_;
};

// One contender of a row; without work of its own its time comes from Python.
struct Contender {
    std::function<void()> work;
    std::size_t values = 1; // made by one work
    double best_ns = std::numeric_limits<double>::infinity();

    void measure() {
        using Clock = std::chrono::steady_clock;
        constexpr std::chrono::milliseconds slice{2};
        for (const Clock::time_point start = Clock::now(); Clock::now() - start < slice;) {
            const Clock::time_point before = Clock::now();
            work();
            const std::chrono::duration<double, std::nano> took = Clock::now() - before;
            best_ns = std::min(best_ns, took.count() / static_cast<double>(values));
        }
    }
};

enum class Kind { logarithm, exponential, grid, draw, draw_by_counter, map, whole_map, map_in_place, other };

struct Row {
    const char *task, *instructions;
    Kind kind;
    Contender *levelbook, *plain, *numpy, *sleef, *copy;
};

class Table {
  public:
    Contender *add(std::size_t values, std::function<void()> work) {
        return &contenders_.emplace_back(Contender{std::move(work), values});
    }
    Contender *from_python(const std::string &task, const std::string &contender) {
        return &python_[task + " " + contender];
    }
    void add(const Row &row) { rows_.push_back(row); }

    // All contenders of a row that work here must leave the same in its result.
    void add(const Row &row, std::span<const double> result) {
        row.levelbook->work();
        const std::vector<double> ours(result.begin(), result.end());
        for (const Contender *other : {row.plain, row.sleef}) {
            if (other == nullptr) continue;
            other->work();
            for (std::size_t i = 0; i < ours.size(); ++i)
                if (!(std::abs(result[i] - ours[i]) <= 1e-9 * (1.0 + std::abs(ours[i]))) || !std::isfinite(ours[i]))
                    fail(std::string("results differ: ") + row.task);
        }
        add(row);
    }

    void run(const std::string &python_command) {
        for (int round = 0; round < rounds; ++round) {
            for (Contender &contender : contenders_) contender.measure();
            if (!python_command.empty() && round % (rounds / rounds_of_python) == 0) ask_python(python_command);
        }
    }

    void print() const {
        std::printf("%-34s %-10s %11s %9s %9s %9s %9s\n", "", "", "levelbook,", "C++ loop", "", "", "copy of");
        std::printf("%-34s %-10s %11s %9s %9s %9s %9s\n", "work", "set", "ns each", "with libm", "NumPy", "SLEEF",
                    "the bytes");
        for (const Row &row : rows_) {
            std::printf("%-34s %-10s %11.2f", row.task, row.instructions, row.levelbook->best_ns);
            for (const Contender *other : {row.plain, row.numpy, row.sleef, row.copy})
                if (const double ratio = compare(row, other); std::isfinite(ratio)) std::printf(" %9.2f", ratio);
                else std::printf(" %9s", "-");
            std::printf("\n");
        }
        std::printf(
            "Each figure under another's name is its time divided by levelbook's in this run: above 1 levelbook is "
            "faster.\n\n");
    }

    // The least ratio over the rows of a kind, and where it is; `wide` leaves out the baseline.
    void judge(const char *bar, std::initializer_list<Kind> kinds, Contender *Row::*other, double least,
               bool wide) const {
        const Row *worst = nullptr;
        for (const Row &row : rows_) {
            if (std::ranges::find(kinds, row.kind) == kinds.end() || !std::isfinite(compare(row, row.*other))) continue;
            if (wide && std::strcmp(row.instructions, "baseline") == 0) continue;
            if (worst == nullptr || compare(row, row.*other) < compare(*worst, worst->*other)) worst = &row;
        }
        if (worst == nullptr) return;
        const double ratio = compare(*worst, worst->*other);
        std::printf("%s  %s: %.2f at least (%s, %s)\n", ratio >= least ? "met   " : "missed", bar, ratio, worst->task,
                    worst->instructions);
    }

    // The most time over the rows of a kind on one instruction set.
    void limit(const char *bar, std::initializer_list<Kind> kinds, const char *instructions, double most_ns) const {
        const Row *worst = nullptr;
        for (const Row &row : rows_)
            if (std::ranges::find(kinds, row.kind) != kinds.end() && std::strcmp(row.instructions, instructions) == 0 &&
                (worst == nullptr || row.levelbook->best_ns > worst->levelbook->best_ns))
                worst = &row;
        if (worst == nullptr) return;
        const double ns = worst->levelbook->best_ns;
        std::printf("%s  %s: %.2f (%s, %s)\n", ns <= most_ns ? "met   " : "missed", bar, ns, worst->task, instructions);
    }

  private:
    static double compare(const Row &row, const Contender *other) {
        return other == nullptr ? std::numeric_limits<double>::quiet_NaN() : other->best_ns / row.levelbook->best_ns;
    }

    void ask_python(const std::string &command) {
        std::FILE *answer = ::popen(command.c_str(), "r");
        if (answer == nullptr) fail("cannot start Python");
        char task[64], contender[64];
        double ns;
        while (std::fscanf(answer, "%63s %63s %lf", task, contender, &ns) == 3) {
            double &best = from_python(task, contender)->best_ns;
            best = std::min(best, ns);
        }
        if (::pclose(answer) != 0) fail("the Python side failed");
    }

    std::deque<Contender> contenders_;
    std::map<std::string, Contender> python_;
    std::vector<Row> rows_;
};

struct Set {
    const char *name;
    std::int32_t value;
    const bench::SleefLoops *sleef;
};

// The instruction sets of this processor.
std::vector<Set> sets() {
#ifdef LEVELBOOK_SLEEF
    std::vector<Set> all{{"baseline", LVB_INSTRUCTIONS_BASELINE, &bench::sleef_baseline},
                         {"AVX2", LVB_INSTRUCTIONS_AVX2, &bench::sleef_avx2},
                         {"AVX-512", LVB_INSTRUCTIONS_AVX512, &bench::sleef_avx512}};
#else
    std::vector<Set> all{{"baseline", LVB_INSTRUCTIONS_BASELINE, nullptr},
                         {"AVX2", LVB_INSTRUCTIONS_AVX2, nullptr},
                         {"AVX-512", LVB_INSTRUCTIONS_AVX512, nullptr}};
#endif
    const std::int32_t best = lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED;
    std::erase_if(all, [&](const Set &set) { return set.value > best; });
    return all;
}

Contender *copy(Table &table, const Values &x, const Values &y) {
    return table.add(x.size(), [&] { std::memcpy(y.data(), x.data(), x.size() * sizeof(double)); });
}

lvb_columns columns(std::int32_t formula, std::int32_t instructions, const Values &x, const Values &y) {
    lvb_columns columns{};
    columns.size = sizeof columns;
    columns.formula = formula;
    columns.instructions = instructions;
    columns.count = x.size();
    columns.argument_1 = x.data();
    columns.result = y.data();
    return columns;
}

Contender *compute(Table &table, const lvb_columns &columns) {
    return table.add(columns.count, [=] { accept(lvb_compute_columns(&columns, nullptr, nullptr)); });
}

// A conversion over a column, in every instruction set.
void add_column(Table &table, const char *task, const char *python_task, Kind kind, std::int32_t formula,
                bench::ColumnLoop plain_loop, bench::ColumnLoop bench::SleefLoops::*kernel, const Values &x,
                const Values &y, bool with_automatic) {
    Contender *plain = table.add(x.size(), [=, &x, &y] { plain_loop(x.data(), y.data(), x.size()); });
    Row row{task, "", kind, nullptr, plain, table.from_python(python_task, "numpy"), nullptr, copy(table, x, y)};
    for (const Set &set : sets()) {
        row.instructions = set.name;
        row.levelbook = compute(table, columns(formula, set.value | LVB_INSTRUCTIONS_ASKED, x, y));
        row.sleef = nullptr;
        if (set.sleef != nullptr) {
            const bench::ColumnLoop loop = set.sleef->*kernel;
            row.sleef = table.add(x.size(), [=, &x, &y] { loop(x.data(), y.data(), x.size()); });
        }
        table.add(row, y.all());
    }
    if (!with_automatic) return;
    row.instructions = "automatic";
    row.levelbook = compute(table, columns(formula, LVB_INSTRUCTIONS_AUTOMATIC, x, y));
    row.sleef = nullptr;
    table.add(row, y.all());
}

void add_free_space(Table &table, const Values &distance_m, const Values &y) {
    static const double frequency_mhz = 610.0;
    Contender *plain = table.add(distance_m.size(), [&] {
        bench::plain::free_space_loss(frequency_mhz, distance_m.data(), y.data(), distance_m.size());
    });
    for (const Set &set : sets()) {
        lvb_columns call = columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, set.value | LVB_INSTRUCTIONS_ASKED, distance_m, y);
        call.single = 1;
        call.argument_2 = call.argument_1;
        call.argument_1 = &frequency_mhz;
        table.add({"free-space loss at one frequency", set.name, Kind::other, compute(table, call), plain,
                   table.from_python("free_space", "numpy"), nullptr, copy(table, distance_m, y)},
                  y.all());
    }
}

bench::plain::Cable catalogue_cable() {
    bench::plain::Cable cable;
    lvb_cable_row row{};
    row.size = sizeof row;
    for (std::uint32_t i = 0; lvb_describe_cable_row(LVB_CABLE_RG_213_U, i, &row, nullptr) == LVB_OK; ++i) {
        cable.frequency_mhz.push_back(row.frequency_mhz);
        cable.attenuation_db_per_100m.push_back(row.attenuation_db_per_100m);
    }
    return cable;
}

void add_cable(Table &table, const bench::plain::Cable &cable, const Values &frequency_mhz, const Values &y) {
    Contender *ours = table.add(line_length, [&] {
        lvb_cable_run run{};
        run.size = sizeof run;
        run.cable_type = LVB_CABLE_RG_213_U;
        run.connector_count = 2;
        run.length_m = 15.0;
        lvb_cable_loss loss{};
        loss.size = sizeof loss;
        for (std::size_t i = 0; i < line_length; ++i) {
            run.frequency_mhz = frequency_mhz.data()[i];
            accept(lvb_compute_cable_loss(&run, nullptr, &loss, nullptr));
            y.data()[i] = loss.loss_db;
        }
    });
    Contender *plain = table.add(
        line_length, [&] { bench::plain::cable_sweep(cable, 15.0, 2, frequency_mhz.data(), y.data(), line_length); });
    table.add({"cable over a sweep, a call each", "-", Kind::other, ours, plain, nullptr, nullptr, nullptr}, y.all());
}

// The plain loops' words for the chain of 12 stages.
bench::plain::Link plain_link(const bench::plain::Cable &cable) {
    return {cable, 1.5, 3.0, 2, 14.77, -3.5 + 4.0 + 6.0 - 3.0 - 10.0 - 15.0 - 2.0};
}

void add_grid(Table &table, const bench::Chain &chain, const bench::plain::Link &link) {
    static std::vector<double> frequency_mhz, distance_m, parts(line_length);
    static const Values levels(line_length * line_length), other(line_length * line_length), scratch(2 * line_length);
    for (std::size_t i = 0; i < line_length; ++i) {
        frequency_mhz.push_back(470.0 + 0.224 * static_cast<double>(i));
        distance_m.push_back(1.0 + 0.3 * static_cast<double>(i));
    }
    Contender *each =
        table.add(levels.size(), [&] { bench::plain::grid(link, frequency_mhz, distance_m, levels.data()); });
    Contender *once = table.add(levels.size(), [&] {
        bench::plain::grid_by_parts(link, frequency_mhz, distance_m, parts.data(), levels.data());
    });
    Contender *copied = copy(table, other, levels);
    Contender *numpy = table.from_python("grid", "numpy");
    for (const Set &set : sets()) {
        lvb_grid grid{};
        grid.size = sizeof grid;
        grid.instructions = set.value | LVB_INSTRUCTIONS_ASKED;
        grid.frequency_count = grid.distance_count = line_length;
        grid.link = &chain.link();
        grid.frequency_mhz = frequency_mhz.data();
        grid.distance_m = distance_m.data();
        grid.scratch = scratch.data();
        grid.level_dbm = levels.data();
        Contender *ours = table.add(levels.size(), [=] { accept(lvb_compute_grid(&grid, nullptr, nullptr)); });
        table.add({"budget 1000 x 1000", set.name, Kind::grid, ours, each, numpy, nullptr, copied}, levels.all());
        table.add({"  the loop's logarithms taken once", set.name, Kind::other, ours, once, nullptr, nullptr, nullptr},
                  levels.all());
    }
}

// Everything that a map tells, where it goes.
struct WholeMap {
    Values margin{line_length * line_length}, headroom{line_length * line_length};
    std::vector<std::int32_t> zone = std::vector<std::int32_t>(line_length * line_length), serving = zone;
    lvb_map_summary summary{};

    void take(lvb_map &map) {
        summary.size = sizeof summary;
        map.margin_db = margin.data();
        map.headroom_db = headroom.data();
        map.zone = zone.data();
        map.serving = serving.data();
    }
};

// Maps of the level alone, and of everything. NumPy computes each as one writes it, and working in place. Values are
// points times antennas.
struct MapTask {
    const char *name, *whole_name;
    std::string python_task;
    bool is_judged;
    std::size_t antennas;
    double exponent;
};
void add_map(Table &table, const MapTask &task) {
    static std::deque<bench::Site> kept;
    static const Values levels(line_length * line_length);
    static WholeMap whole;
    const bench::Site &site = kept.emplace_back(task.antennas, task.exponent);
    std::vector<bench::plain::Antenna> plain;
    for (std::size_t i = 0; i < task.antennas; ++i) {
        const double azimuth = bench::Site::azimuth_of(i) * std::acos(-1.0) / 180.0;
        plain.push_back({bench::Site::x_of(i), bench::Site::y_m, bench::Site::z_m, std::sin(azimuth), std::cos(azimuth),
                         site.level_at_1m_dbm()});
    }
    const std::size_t values = task.antennas * levels.size();
    Contender *loop = table.add(values, [=, exponent = task.exponent] {
        bench::plain::map(plain, exponent, bench::Site::pack_m, bench::Site::step_m, line_length, line_length,
                          levels.data());
    });
    const auto add = [&](const char *name, const char *set, Kind kind, Contender *ours, Contender *other,
                         const std::string &python_task) {
        Contender *numpy = table.from_python(python_task, "numpy");
        table.add({name, set, kind, ours, other, numpy, nullptr, nullptr}, levels.all());
        table.add({"  NumPy in place", set, task.is_judged ? Kind::map_in_place : Kind::other, ours, nullptr,
                   table.from_python(python_task, "numpy_in_place"), nullptr, nullptr});
    };
    for (const Set &set : sets()) {
        lvb_map map = site.map(line_length, line_length, set.value | LVB_INSTRUCTIONS_ASKED, levels.data());
        add(task.name, set.name, task.is_judged ? Kind::map : Kind::other,
            table.add(values, [=] { accept(lvb_compute_map(&map, nullptr, nullptr)); }), loop, task.python_task);
        whole.take(map);
        add(task.whole_name, set.name, task.is_judged ? Kind::whole_map : Kind::other,
            table.add(values, [=] { accept(lvb_compute_map(&map, &whole.summary, nullptr)); }), nullptr,
            task.python_task + "_whole");
    }
}

void add_single(Table &table, const bench::Chain &chain, const bench::plain::Link &link, const Values &x,
                const Values &y) {
    Contender *ours = table.add(line_length, [&] {
        for (std::size_t i = 0; i < line_length; ++i) y.data()[i] = lvb_dbm_from_mw(x.data()[i]);
    });
    Contender *plain = table.add(line_length, [&] { bench::plain::dbm(x.data(), y.data(), line_length); });
    table.add({"one call: dBm from mW", "-", Kind::other, ours, plain, nullptr, nullptr, nullptr},
              y.all().first(line_length));

    static std::vector<double> frequency_mhz(1), distance_m(1);
    Contender *budgets = table.add(line_length, [&] {
        lvb_link moving = chain.link();
        lvb_budget budget{};
        budget.size = sizeof budget;
        for (std::size_t i = 0; i < line_length; ++i) {
            moving.far_distance_m = 3.0 + x.data()[i];
            accept(lvb_compute_budget(&moving, &budget, nullptr, 0, nullptr));
            y.data()[i] = budget.far_end.level_dbm;
        }
    });
    Contender *sums = table.add(line_length, [&] {
        frequency_mhz[0] = chain.link().frequency_mhz;
        for (std::size_t i = 0; i < line_length; ++i) {
            distance_m[0] = 3.0 + x.data()[i];
            bench::plain::grid(link, frequency_mhz, distance_m, y.data() + i);
        }
    });
    table.add({"one budget of 12 stages (loop: far)", "-", Kind::other, budgets, sums, nullptr, nullptr, nullptr},
              y.all().first(line_length));
}

void add_python(Table &table) {
    for (const auto &[task, key] :
         {std::pair{"Python, one call: dBm from mW", "python_call"},
          std::pair{"Python, one budget of 12 stages", "python_budget"},
          std::pair{"Python, 20 log of 4096", "python_array"}, std::pair{"Python, budget 1000 x 1000", "python_grid"}})
        table.add({task, "cffi", Kind::other, table.from_python(key, "levelbook"), table.from_python(key, "plain"),
                   table.from_python(key, "numpy"), nullptr, nullptr});
    // Draws, against NumPy's usual generator and against its generator that counts.
    for (const auto &[task, key] :
         {std::pair{"draw, rectangular", "draw_rectangular"}, std::pair{"draw, triangular", "draw_triangular"},
          std::pair{"draw, normal", "draw_normal"}, std::pair{"draw, arc sine", "draw_arc_sine"},
          std::pair{"draw, Rayleigh in dB", "draw_rayleigh"}, std::pair{"draw, Rice in dB", "draw_rice"},
          std::pair{"draw, Nakagami in dB", "draw_nakagami"}}) {
        Contender *ours = table.from_python(key, "levelbook");
        table.add({task, "cffi", Kind::draw, ours, nullptr, table.from_python(key, "numpy"), nullptr, nullptr});
        table.add({"  NumPy by counter", "cffi", Kind::draw_by_counter, ours, nullptr,
                   table.from_python(std::string(key) + "_counting", "numpy"), nullptr, nullptr});
    }
    table.add({"trial, normal, counted", "cffi", Kind::other, table.from_python("draw_tallied", "levelbook"), nullptr,
               nullptr, nullptr, nullptr});
}

} // namespace

int main(int argc, char **argv) {
    const std::string python_command = argc > 1 ? argv[1] : "";
    Table table;
    const Values near_m = Values::spread(1.0, 300.0, in_cache), far_m = Values::spread(1.0, 300.0, out_of_cache);
    const Values near_dbm = Values::spread(-120.0, 20.0, in_cache),
                 far_dbm = Values::spread(-120.0, 20.0, out_of_cache);
    const Values near(in_cache), far(out_of_cache);
    using bench::SleefLoops;
    namespace plain = bench::plain;

    add_column(table, "20 log d, 4096 in cache", "log_in_cache", Kind::logarithm, LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO,
               plain::decibels, &SleefLoops::decibels, near_m, near, false);
    add_column(table, "20 log d, 4194304 out of cache", "log_out_of_cache", Kind::logarithm,
               LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO, plain::decibels, &SleefLoops::decibels, far_m, far, true);
    add_column(table, "mW from dBm, 4096 in cache", "exp_in_cache", Kind::exponential, LVB_FORMULA_MW_FROM_DBM,
               plain::milliwatts, &SleefLoops::milliwatts, near_dbm, near, false);
    add_column(table, "mW from dBm, 4194304 out of cache", "exp_out_of_cache", Kind::exponential,
               LVB_FORMULA_MW_FROM_DBM, plain::milliwatts, &SleefLoops::milliwatts, far_dbm, far, false);
    add_free_space(table, near_m, near);

    const plain::Cable cable = catalogue_cable();
    const Values frequency_mhz = Values::spread(50.0, 900.0, line_length), loss(line_length);
    add_cable(table, cable, frequency_mhz, loss);
    const bench::Chain chain(12);
    const plain::Link link = plain_link(cable);
    add_grid(table, chain, link);
    add_map(table, {"map, 4 isotropic antennas", "  with all that it tells", "map_isotropic", true, 4, 0.0});
    add_map(table, {"map, 4 antennas of cos^4", "  with all that it tells", "map_even", true, 4, 4.0});
    add_map(table, {"map, 4 antennas of cos^2.97", "  with all that it tells", "map_any", false, 4, 2.97});
    add_map(table, {"map, 1 isotropic antenna", "  with all that it tells", "map_single", false, 1, 0.0});
    add_single(table, chain, link, near_m, near);
    if (!python_command.empty()) add_python(table);

    table.run(python_command);
    table.print();
    const auto conversions = {Kind::logarithm, Kind::exponential};
    table.judge("columns, AVX2 and up: 3 times as fast as the loop", conversions, &Row::plain, 3.0, true);
    table.judge("logarithms: faster than SLEEF's", {Kind::logarithm}, &Row::sleef, 1.0, false);
    table.judge("exponentials: within 1.3 times SLEEF's time", {Kind::exponential}, &Row::sleef, 1.0 / 1.3, false);
    table.judge("budget grid: within 1.5 times the copy of its result", {Kind::grid}, &Row::copy, 1.0 / 1.5, false);
    table.judge("draws: 4 times as fast as NumPy by counter", {Kind::draw_by_counter}, &Row::numpy, 4.0, false);
    table.judge("draws: 4 times as fast as NumPy", {Kind::draw}, &Row::numpy, 4.0, false);
    table.judge("budget grid: faster than NumPy", {Kind::grid}, &Row::numpy, 1.0, false);
    table.judge("maps of levels, AVX2 and up: 12 times as fast as NumPy", {Kind::map}, &Row::numpy, 12.0, true);
    table.judge("maps with all that they tell, AVX2 and up: the same", {Kind::whole_map}, &Row::numpy, 12.0, true);
    table.judge("maps, AVX2 and up: faster than NumPy in place", {Kind::map_in_place}, &Row::numpy, 1.0, true);
    table.limit("maps of levels: at most 1.2 ns for a point and antenna", {Kind::map}, "AVX-512", 1.2);
    return 0;
}
