// The loss of a body over facing, and the described allowances.
#include "chain/chains.hpp"
#include "units/random.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace {

using proof::sized;

struct Body {
    std::vector<double> facing, loss;
    lvb_body_table table() const {
        auto made = sized<lvb_body_table>();
        made.row_count = static_cast<std::uint32_t>(facing.size());
        made.facing_deg = facing.data();
        made.loss_db = loss.data();
        return made;
    }
};
double loss(const Body &body, double facing_deg) {
    const lvb_body_table table = body.table();
    double result = -1.0;
    EXPECT_EQ(lvb_compute_body_loss(&table, facing_deg, &result, nullptr), LVB_OK);
    return result;
}

TEST(BodyLoss, IsExactAtItsRowsAndClosesToACircle) {
    const Body body{{0.0, 90.0, 180.0, 270.0}, {2.0, 6.0, 24.0, 8.0}};
    for (std::size_t i = 0; i < 4; ++i)
        for (const double turn : {-360.0, 0.0, 360.0})
            if (std::fabs(body.facing[i] + turn) <= 360.0) {
                EXPECT_EQ(loss(body, body.facing[i] + turn), body.loss[i]);
            }
    EXPECT_EQ(loss(body, 45.0), 4.0);
    EXPECT_EQ(loss(body, 135.0), 15.0);
    EXPECT_EQ(loss(body, 315.0), 5.0); // across the seam
    EXPECT_EQ(loss(body, -45.0), 5.0);
    EXPECT_EQ(loss(Body{{-30.0}, {7.0}}, 199.0), 7.0);
}

TEST(BodyLoss, TurnsWithItsTable) {
    proof::Random random(121);
    for (int i = 0; i < 2000; ++i) {
        Body body, mirrored;
        for (double a = random.uniform(-180.0, -100.0), first = a; a < first + 355.0; a += random.uniform(5.0, 120.0)) {
            body.facing.push_back(a);
            body.loss.push_back(random.uniform(0.0, 40.0));
        }
        for (std::size_t k = body.facing.size(); k-- > 0;) {
            mirrored.facing.push_back(-body.facing[k]);
            mirrored.loss.push_back(body.loss[k]);
        }
        const double facing = random.uniform(-180.0, 180.0);
        EXPECT_NEAR(loss(body, facing), loss(mirrored, -facing), 1e-10);
        EXPECT_NEAR(loss(body, facing), loss(body, facing > 0.0 ? facing - 360.0 : facing + 360.0), 1e-10);
        Body turned = body;
        for (double &a : turned.facing) a += 45.0;
        if (facing < 135.0) {
            EXPECT_NEAR(loss(body, facing), loss(turned, facing + 45.0), 1e-10);
        }
    }
}

TEST(Allowances, TellTheirSourceAndNeverMoreThanItGives) {
    ASSERT_GE(lvb_allowance_count(), 6u);
    for (std::uint32_t i = 0; i < lvb_allowance_count(); ++i) {
        auto info = sized<lvb_allowance_info>();
        ASSERT_EQ(lvb_describe_allowance(i, &info, nullptr), LVB_OK);
        EXPECT_FALSE(std::isnan(info.usual_db) && (std::isnan(info.low_db) || std::isnan(info.high_db)));
        EXPECT_EQ(std::isnan(info.low_db), std::isnan(info.high_db));
        if (!std::isnan(info.low_db)) {
            EXPECT_LT(info.low_db, info.high_db);
        }
        for (const double db : {info.low_db, info.usual_db, info.high_db})
            if (!std::isnan(db)) {
                EXPECT_GT(db, 0.0);
                EXPECT_LE(db, 200.0);
            }
        for (const char *text : {info.subject, info.name, info.source, info.remark})
            EXPECT_GT(std::string(text).size(), 3u);
        const std::string source = info.source;
        EXPECT_TRUE(source == "common practice, no source" || source.find("; seen in ") != std::string::npos) << source;
    }
}

// The rows as their sources print them: references of the project, section "Body".
TEST(Allowances, AreAsPrinted) {
    struct Printed {
        double low, usual, high;
        const char *source;
    };
    const double none = std::nan("");
    const Printed printed[] = {{none, 3.0, none, "common practice, no source"},
                               {none, 3.0, none, "Garg"},
                               {none, 1.5, none, "Garg"},
                               {5.0, none, 10.0, "Vorobyov and Yarovoy"},
                               {10.0, none, 35.0, "Vorobyov and Yarovoy"},
                               {20.0, none, 30.0, "common practice, no source"}};
    ASSERT_EQ(lvb_allowance_count(), std::size(printed));
    const auto same = [](double a, double b) { return a == b || (std::isnan(a) && std::isnan(b)); };
    for (std::uint32_t i = 0; i < std::size(printed); ++i) {
        auto info = sized<lvb_allowance_info>();
        ASSERT_EQ(lvb_describe_allowance(i, &info, nullptr), LVB_OK);
        EXPECT_TRUE(same(info.low_db, printed[i].low)) << i;
        EXPECT_TRUE(same(info.usual_db, printed[i].usual)) << i;
        EXPECT_TRUE(same(info.high_db, printed[i].high)) << i;
        EXPECT_EQ(std::string(info.source).find(printed[i].source), 0u) << i;
    }
}

} // namespace
