// levelbook.hpp: sized structs, links over spans, answers that are a result or a fault.
#include <levelbook/levelbook.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

namespace {

std::vector<lvb_stage> line() {
    std::vector<lvb_stage> stages(2, lvb_stage{});
    stages[0].kind = LVB_KIND_SOURCE;
    stages[0].level_dbm = 10.0;
    stages[1].kind = LVB_KIND_PASSIVE;
    stages[1].gain_db = -3.5;
    return stages;
}

lvb_link link_of(const std::vector<lvb_stage> &stages) {
    lvb_link link = levelbook::link(stages);
    link.frequency_mhz = 600.0;
    return link;
}

TEST(Comfort, SizesEveryStruct) {
    EXPECT_EQ(levelbook::sized<lvb_budget>().size, sizeof(lvb_budget));
    EXPECT_EQ(levelbook::sized<lvb_cable_run>().size, sizeof(lvb_cable_run));
    EXPECT_EQ(levelbook::sized<lvb_cable_run>().length_m, 0.0);
}

TEST(Comfort, LinksASpanOfStages) {
    const std::vector<lvb_stage> stages = line();
    const lvb_link link = levelbook::link(stages);
    EXPECT_EQ(link.size, sizeof(lvb_link));
    EXPECT_EQ(link.stages, stages.data());
    EXPECT_EQ(link.stage_count, 2u);
    EXPECT_EQ(link.stage_size, sizeof(lvb_stage));
    EXPECT_EQ(link.far_distance_m, 0.0);
}

TEST(Comfort, AnswersWithTheResult) {
    const std::vector<lvb_stage> stages = line();
    std::array<lvb_level, 2> levels{};
    const auto budget = levelbook::compute_budget(link_of(stages), levels);
    ASSERT_TRUE(budget) << budget.text();
    EXPECT_EQ(budget->far_end.level_dbm, 6.5);
    EXPECT_EQ((*budget).entries, 2u);
    EXPECT_EQ(levels[0].far_level_dbm, 10.0);
    EXPECT_EQ(levels[1].far_level_dbm, 6.5);
    EXPECT_TRUE(levelbook::compute_budget(link_of(stages)));
}

TEST(Comfort, AnswersWithTheFault) {
    std::vector<lvb_stage> stages = line();
    stages[1].gain_db = 3.5;
    const auto budget = levelbook::compute_budget(link_of(stages));
    EXPECT_FALSE(budget);
    EXPECT_EQ(budget.fault().status, LVB_E_ABOVE_RANGE);
    EXPECT_EQ(budget.fault().stage, 1);
    EXPECT_EQ(budget.text(), "stages[1].gain_db is 3.5, which is too high; allowed -200 to 0.");
    EXPECT_EQ(budget->entries, 0u);
}

TEST(Comfort, RefusesLevelsThatAreNotOneForEachStage) {
    const std::vector<lvb_stage> stages = line();
    std::array<lvb_level, 3> levels{};
    levels[0].far_level_dbm = 42.0;
    const auto budget = levelbook::compute_budget(link_of(stages), levels);
    EXPECT_FALSE(budget);
    EXPECT_EQ(budget.fault().size, sizeof(lvb_fault));
    EXPECT_EQ(budget.fault().status, LVB_E_COUNT);
    EXPECT_EQ(budget.fault().structure, LVB_STRUCT_LINK);
    EXPECT_EQ(budget.fault().field, LVB_FIELD_STAGE_COUNT);
    EXPECT_EQ(budget.fault().stage, -1);
    EXPECT_EQ(budget.fault().row, -1);
    EXPECT_EQ(budget.fault().value, 2.0);
    EXPECT_EQ(budget.fault().minimum, 3.0);
    EXPECT_EQ(budget.fault().maximum, 3.0);
    EXPECT_EQ(budget.text().find("lvb_link.stage_count is 2"), 0u) << budget.text();
    EXPECT_EQ(levels[0].far_level_dbm, 42.0);
}

TEST(Comfort, ComputesCables) {
    auto run = levelbook::sized<lvb_cable_run>();
    run.frequency_mhz = 200.0;
    run.length_m = 50.0;
    const double mhz[] = {100.0, 200.0}, db[] = {6.0, 9.0};
    auto table = levelbook::sized<lvb_cable_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.attenuation_db_per_100m = db;
    const auto loss = levelbook::compute_cable_loss(run, &table);
    ASSERT_TRUE(loss) << loss.text();
    EXPECT_EQ(loss->cable_loss_db, 4.5);
    EXPECT_FALSE(levelbook::compute_cable_loss(run)); // neither a type nor a table
}

TEST(Comfort, ComputesAPath) {
    auto path = levelbook::sized<lvb_path>();
    const auto loss = levelbook::compute_path_loss(path, 600.0, 30.0);
    ASSERT_TRUE(loss) << loss.text();
    EXPECT_EQ(loss->loss_db, lvb_free_space_loss_db(600.0, 30.0));
    path.model = LVB_PATH_TWO_RAY;
    EXPECT_FALSE(levelbook::compute_path_loss(path, 600.0, 30.0)); // no heights
}

TEST(Comfort, ComputesColumns) {
    const std::vector<double> metres = {10.0, 25.0, 40.0, -1.0};
    std::array<double, 4> loss{};
    // a value and a column
    const auto bad = levelbook::compute_columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, {600.0, metres}, loss);
    ASSERT_TRUE(bad) << bad.text();
    EXPECT_EQ(bad->count, 1u);
    EXPECT_EQ(bad->first, 3u);
    for (std::size_t k = 0; k < 3; ++k) EXPECT_EQ(loss[k], lvb_free_space_loss_db(600.0, metres[k]));
    EXPECT_TRUE(std::isnan(loss[3]));
    // a column and a value; other containers, an instruction set
    const double mhz[] = {500.0, 600.0};
    std::vector<double> two(2);
    ASSERT_TRUE(levelbook::compute_columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, {mhz, 10.0}, two, lvb_best_instructions()));
    EXPECT_EQ(two[0], lvb_free_space_loss_db(500.0, 10.0));
    EXPECT_EQ(two[1], lvb_free_space_loss_db(600.0, 10.0));
    // one argument, in place
    two = {1.0, 100.0};
    ASSERT_TRUE(levelbook::compute_columns(LVB_FORMULA_DBM_FROM_MW, {two}, two));
    EXPECT_EQ(two[0], 0.0);
    EXPECT_EQ(two[1], 20.0);
    // three arguments, all single: one value over and over
    const auto three = levelbook::compute_columns(LVB_FORMULA_ELLIPTICAL_POLARIZATION_LOSS_DB, {0.5, 1.0, 45.0}, two);
    ASSERT_TRUE(three) << three.text();
    EXPECT_EQ(two[0], lvb_elliptical_polarization_loss_db(0.5, 1.0, 45.0));
    EXPECT_EQ(two[1], two[0]);
    // no values
    EXPECT_TRUE(levelbook::compute_columns(LVB_FORMULA_DBM_FROM_MW, {std::span<double>()}, {}));
}

TEST(Comfort, RefusesColumnsOfOtherLengths) {
    const std::vector<double> longer = {1.0, 2.0, 3.0}, shorter = {1.0};
    std::array<double, 2> result{42.0, 42.0};
    for (const std::vector<double> &column : {longer, shorter, std::vector<double>{}})
        for (const levelbook::Arguments &arguments :
             {levelbook::Arguments{600.0, column}, levelbook::Arguments{column, 600.0}}) {
            const auto bad = levelbook::compute_columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, arguments, result);
            EXPECT_FALSE(bad);
            EXPECT_EQ(bad.fault().status, LVB_E_COUNT);
            EXPECT_EQ(bad.fault().value, 2.0);
            EXPECT_EQ(bad.fault().maximum, static_cast<double>(column.size()));
            EXPECT_EQ(bad.text().find("lvb_columns.count is 2; allowed "), 0u) << bad.text();
            EXPECT_EQ(result[0], 42.0);
        }
    // what the library refuses comes through: too few and too many arguments
    EXPECT_EQ(levelbook::compute_columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, {600.0}, result).text(),
              "lvb_columns.argument_2 is null, but must be given.");
    EXPECT_EQ(levelbook::compute_columns(LVB_FORMULA_DBM_FROM_MW, {1.0, 2.0}, result).fault().status, LVB_E_UNUSED);
}

TEST(Comfort, ComputesGrids) {
    std::vector<lvb_stage> stages(4, lvb_stage{});
    stages[0].kind = LVB_KIND_SOURCE;
    stages[1].kind = stages[3].kind = LVB_KIND_ANTENNA;
    stages[2].kind = LVB_KIND_AIR;
    const std::array<double, 2> mhz = {500.0, 600.0};
    const std::vector<double> metres = {5.0, 10.0, -1.0};
    std::vector<double> scratch(6), levels(6);
    const lvb_link link = levelbook::link(stages);
    const auto bad = levelbook::compute_grid(link, mhz, metres, scratch, levels, LVB_END_NEAR, lvb_best_instructions());
    ASSERT_TRUE(bad) << bad.text();
    EXPECT_EQ(bad->count, 2u);
    EXPECT_EQ(bad->first, 2u);
    EXPECT_EQ(levels[1], -lvb_free_space_loss_db(500.0, 10.0));
    EXPECT_EQ(levels[3], -lvb_free_space_loss_db(600.0, 5.0));
    EXPECT_TRUE(std::isnan(levels[5]));
    // without air no scratch is needed
    EXPECT_FALSE(levelbook::compute_grid(link, mhz, metres, {}, levels));
    const std::vector<lvb_stage> wired = line();
    ASSERT_TRUE(levelbook::compute_grid(levelbook::link(wired), mhz, metres, {}, levels));
    EXPECT_EQ(levels[5], 6.5);
    // no values
    EXPECT_TRUE(levelbook::compute_grid(link, {}, {}, {}, {}));
    EXPECT_TRUE(levelbook::compute_grid(link, {}, metres, {}, {}));
    EXPECT_TRUE(levelbook::compute_grid(link, mhz, {}, {}, {}));
}

TEST(Comfort, RefusesGridsWithoutRoom) {
    const std::vector<lvb_stage> stages = line();
    const lvb_link link = levelbook::link(stages);
    const std::array<double, 2> mhz = {500.0, 600.0};
    const std::array<double, 3> metres = {5.0, 10.0, 20.0};
    for (const std::size_t size : std::initializer_list<std::size_t>{0, 3, 5, 7, 8}) {
        std::vector<double> scratch(6, 42.0), levels(size, 42.0);
        const auto bad = levelbook::compute_grid(link, mhz, metres, scratch, levels);
        EXPECT_FALSE(bad) << size;
        EXPECT_EQ(bad.fault().status, LVB_E_COUNT);
        EXPECT_EQ(bad.fault().value, 3.0);
        EXPECT_EQ(bad.fault().maximum, static_cast<double>(size) / 2.0);
        for (const double level : levels) EXPECT_EQ(level, 42.0);
    }
    std::vector<double> scratch(5), levels(6);
    EXPECT_EQ(levelbook::compute_grid(link, mhz, metres, scratch, levels).text(),
              "lvb_grid.distance_count is 3; allowed 0 to 2.");
}

TEST(Comfort, ComputesMapsAndWalks) {
    const std::vector<lvb_stage> stages = line();
    auto site = levelbook::sized<lvb_site>();
    auto map = levelbook::sized<lvb_map>();
    map.site = &site;
    map.step_x_m = map.step_y_m = 1.0;
    EXPECT_EQ(levelbook::compute_map(map).text(), "lvb_site.antenna_count is 0; allowed 1 to 32.");
    const double x[] = {0.0, 3.0}, y[] = {0.0, 4.0};
    auto walk = levelbook::sized<lvb_walk>();
    walk.site = &site;
    walk.corner_count = 2;
    walk.x_m = x;
    walk.y_m = y;
    walk.step_m = 1.0;
    EXPECT_EQ(levelbook::compute_walk(walk).text(), "lvb_walk.speed_m_per_s is missing; allowed 0.001 to 1000.");
    std::vector<lvb_stage> chain(4);
    const std::int32_t kinds[] = {LVB_KIND_SOURCE, LVB_KIND_ANTENNA, LVB_KIND_AIR, LVB_KIND_ANTENNA};
    for (std::size_t i = 0; i < 4; ++i) chain[i].kind = kinds[i];
    auto link = levelbook::link(chain);
    link.frequency_mhz = 600.0;
    auto antenna = levelbook::sized<lvb_antenna>();
    antenna.z_m = 2.0;
    const lvb_site_antenna one{&antenna, &link};
    site.antennas = &one;
    site.antenna_count = 1;
    site.antenna_size = sizeof one;
    map.column_count = map.row_count = 1;
    walk.speed_m_per_s = 2.5;
    const auto mapped = levelbook::compute_map(map);
    ASSERT_TRUE(mapped) << mapped.text();
    EXPECT_NEAR(mapped->worst_level_dbm, -lvb_free_space_loss_db(600.0, 2.0), 1e-12);
    const auto walked = levelbook::compute_walk(walk);
    ASSERT_TRUE(walked) << walked.text();
    EXPECT_EQ(walked->duration_s, 2.0);
}

// A walk of 40 m to 4 m in free space, 0 dBm between isotropic antennas into a window.
std::vector<lvb_stage> walk_out() {
    std::vector<lvb_stage> stages(5);
    const std::int32_t kinds[] = {LVB_KIND_SOURCE, LVB_KIND_ANTENNA, LVB_KIND_AIR, LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
    for (std::size_t i = 0; i < 5; ++i) stages[i].kind = kinds[i];
    stages[4].stated = LVB_STATED_FLOOR | LVB_STATED_CEILING | LVB_STATED_NOISE_FIGURE;
    stages[4].floor_dbm = -90.0;
    stages[4].ceiling_dbm = -20.0;
    stages[4].noise_figure_db = 8.0;
    return stages;
}
lvb_link walk_of(const std::vector<lvb_stage> &stages) {
    lvb_link link = link_of(stages);
    link.far_distance_m = 40.0;
    link.near_distance_m = 4.0;
    return link;
}

TEST(Comfort, AnswersQuestionsAboutALink) {
    const std::vector<lvb_stage> stages = walk_out();
    const lvb_link link = walk_of(stages);
    const double loss = lvb_free_space_loss_db(600.0, 40.0);

    auto conditions = levelbook::sized<lvb_noise_conditions>();
    conditions.bandwidth_mhz = 0.2;
    std::array<lvb_noise_line, 5> noise_lines{};
    const auto noise = levelbook::compute_noise(link, conditions, noise_lines);
    ASSERT_TRUE(noise) << noise.text();
    EXPECT_EQ(noise->noise_figure_db, 8.0);
    EXPECT_EQ(noise_lines[4].stage_noise_figure_db, 8.0);

    auto limit = levelbook::sized<lvb_limit>();
    limit.quantity = LVB_QUANTITY_EIRP;
    limit.limit_dbm = 3.0;
    const auto checked = levelbook::check_limit(link, limit);
    ASSERT_TRUE(checked) << checked.text();
    EXPECT_EQ(checked->room_db, 3.0);

    const double mhz[] = {600.0, 1200.0};
    auto sweep = levelbook::sized<lvb_sweep>();
    sweep.link = &link;
    sweep.frequency_mhz = mhz;
    sweep.frequency_count = 2;
    const auto swept = levelbook::compute_sweep(sweep);
    ASSERT_TRUE(swept) << swept.text();
    EXPECT_EQ(swept->lowest_margin.frequency_mhz, 1200.0);

    auto solve = levelbook::sized<lvb_solve>();
    solve.structure = LVB_STRUCT_LINK;
    solve.field = LVB_FIELD_FAR_DISTANCE_M;
    solve.goal = LVB_GOAL_MARGIN;
    solve.link = &link;
    solve.wanted = 90.0 - loss;
    const auto solved = levelbook::compute_solution(solve);
    ASSERT_TRUE(solved) << solved.text();
    EXPECT_STREQ(lvb_solution_name(solved->outcome), "found");
    EXPECT_NEAR(solved->value, 40.0, 1e-9);

    std::array<lvb_contribution, 5> contributions{};
    const auto ranking = levelbook::compute_ranking(link, contributions);
    ASSERT_TRUE(ranking) << ranking.text();
    EXPECT_EQ(ranking->loss_stage, 2);
    EXPECT_EQ(contributions[2].loss_rank, 1u);

    auto trials = levelbook::sized<lvb_trials>();
    trials.link = &link;
    trials.trial_count = 128;
    const auto tally = levelbook::compute_trials(trials);
    ASSERT_TRUE(tally) << tally.text();
    const auto sure = levelbook::compute_sureness({&*tally, 1});
    ASSERT_TRUE(sure) << sure.text();
    EXPECT_EQ(sure->inside_probability, 1.0);
    EXPECT_EQ(levelbook::compute_sureness({&*tally, 0}).fault().status, LVB_E_MISSING);

    auto locate = levelbook::sized<lvb_locate>();
    locate.link = &link;
    locate.uncertainty_db = 0.5;
    std::array<lvb_suspect, 5> suspects{};
    const auto located = levelbook::locate_fault(locate, suspects);
    ASSERT_TRUE(located) << located.text();
    EXPECT_EQ(located->reading_count, 0u);
    EXPECT_EQ(suspects[1].standard_deviation_db, 10.0); // what is held before any reading
    locate.link = nullptr;
    EXPECT_EQ(levelbook::locate_fault(locate, suspects).fault().status, LVB_E_NULL);

    auto neighbours = levelbook::sized<lvb_neighbours>();
    neighbours.coupling_loss_db = 40.0;
    neighbours.transmit_dbm = 10.0;
    const auto beside = levelbook::compute_coexistence(neighbours);
    ASSERT_TRUE(beside) << beside.text();
    EXPECT_EQ(beside->blocker_dbm, -30.0);
}

TEST(Comfort, ComparesLinks) {
    const std::vector<lvb_stage> one = walk_out();
    std::vector<lvb_stage> other = one;
    other[0].level_dbm = 3.0;
    const lvb_link first = walk_of(one), second = walk_of(other);
    std::vector<std::uint8_t> scratch(lvb_comparison_scratch_bytes(5, 5));
    std::vector<lvb_pair> pairs(10);
    const auto compared = levelbook::compute_comparison(first, second, scratch, pairs);
    ASSERT_TRUE(compared) << compared.text();
    EXPECT_EQ(compared->pair_count, 5u);
    EXPECT_EQ(pairs[0].far_change_difference_db, 3.0);
    EXPECT_TRUE(levelbook::compute_comparison(first, second, scratch));
    pairs.pop_back();
    EXPECT_EQ(levelbook::compute_comparison(first, second, scratch, pairs).text(),
              "lvb_compare.pairs is 9; allowed 10 to 10.");
    scratch.pop_back();
    EXPECT_EQ(levelbook::compute_comparison(first, second, scratch).text(),
              "lvb_compare.scratch_bytes is 24; allowed 25 and more.");
}

TEST(Comfort, ChoosesGear) {
    std::vector<lvb_stage> stages = walk_out();
    const lvb_link link = walk_of(stages);
    lvb_stage weak = stages[0], strong = stages[0];
    weak.level_dbm = -40.0;
    const lvb_item items[] = {{&weak, "weak", nullptr, 1, 1, 0, 0.0, 0.0},
                              {&strong, "strong", nullptr, 2, 1, 0, 0.0, 0.0}};
    const std::uint32_t list[] = {0, 1};
    const lvb_slot slot{0, 0, 2, 0, list};
    const lvb_need need{&link, 0, 0, 0.0, 0.0, 0.0, 0.0};
    auto choice = levelbook::sized<lvb_choice>();
    choice.need_count = choice.slot_count = choice.set_count = 1;
    choice.item_count = 2;
    choice.need_size = sizeof need;
    choice.item_size = sizeof items[0];
    choice.slot_size = sizeof slot;
    choice.stage_size = sizeof(lvb_stage);
    choice.needs = &need;
    choice.items = items;
    choice.slots = &slot;
    const auto room = levelbook::compute_choice_scratch(choice);
    ASSERT_TRUE(room) << room.text();
    std::vector<unsigned char> scratch(room->least_bytes);
    std::uint32_t set = 7;
    std::uint64_t cost = 0;
    choice.scratch = scratch.data();
    choice.scratch_bytes = scratch.size();
    choice.sets = &set;
    choice.costs = &cost;
    const auto chosen = levelbook::compute_choice(choice);
    ASSERT_TRUE(chosen) << chosen.text();
    EXPECT_STREQ(lvb_outcome_name(chosen->outcome), "proven");
    EXPECT_EQ(set, 1u); // the weak one lies 20 dB under the floor
}

TEST(Comfort, RefusesLinesThatAreNotOneForEachStage) {
    const std::vector<lvb_stage> stages = walk_out();
    const lvb_link link = walk_of(stages);
    const std::string why = "lvb_link.stage_count is 5; allowed 4 to 4.";
    std::array<lvb_noise_line, 4> noise{};
    EXPECT_EQ(levelbook::compute_noise(link, levelbook::sized<lvb_noise_conditions>(), noise).text(), why);
    std::array<lvb_contribution, 4> contributions{};
    EXPECT_EQ(levelbook::compute_ranking(link, contributions).text(), why);
    auto locate = levelbook::sized<lvb_locate>();
    locate.link = &link;
    std::array<lvb_suspect, 4> suspects{};
    EXPECT_EQ(levelbook::locate_fault(locate, suspects).text(), why);
}

} // namespace
