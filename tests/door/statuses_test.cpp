// Every status of the header is one that some call here was really refused with: recorded, not declared. The test of
// ctest that asks for it runs all refusals in one process.
#include "door/refusal.hpp"

#include <cstdlib>

namespace {

class EveryStatus : public testing::Environment {
    void TearDown() override {
        if (std::getenv("LEVELBOOK_EXPECT_EVERY_STATUS") == nullptr) return;
        int known = 0;
        for (lvb_status status = -1000; status < 0; ++status) { // the tests of names find no status further out
            if (std::string(lvb_status_name(status)) == "unknown") continue;
            ++known;
            EXPECT_TRUE(proof::received().contains(status)) << lvb_status_name(status) << " is provoked by no test";
        }
        EXPECT_GE(known, 30);
    }
};

[[maybe_unused]] const testing::Environment *const every_status = testing::AddGlobalTestEnvironment(new EveryStatus);

} // namespace
