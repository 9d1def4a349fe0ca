// levelbook.hpp: sized structs, links over spans, answers that are a result or a fault.
#include <levelbook/levelbook.hpp>

#include <gtest/gtest.h>

#include <array>
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

} // namespace
