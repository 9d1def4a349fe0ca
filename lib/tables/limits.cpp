#include "tables/limits.hpp"

namespace lvb::tables {
namespace {

constexpr const char *low_power_tv = "47 CFR 74.861(e)(1)";
constexpr const char *low_power_other = "47 CFR 74.861(d)(1)";
constexpr const char *unlicensed = "47 CFR 15.236(d)";

constexpr const char *licensed = "licensed low power auxiliary stations; 608 to 614 MHz is excluded";
constexpr const char *no_licence = "wireless microphones without a licence; 608 to 614 MHz is excluded";
constexpr const char *duplex_gap = "licensed low power auxiliary stations; their part of the 600 MHz duplex gap";
constexpr const char *other_bands = "licensed, bands other than those of television broadcasting";

constexpr units::Quantity output = units::Quantity::transmitter_output;
constexpr units::Quantity eirp = units::Quantity::eirp;

constexpr LimitRule rules[] = {
    {54.0, 72.0, eirp, 50.0, low_power_tv, licensed},
    {76.0, 88.0, eirp, 50.0, low_power_tv, licensed},
    {174.0, 216.0, eirp, 50.0, low_power_tv, licensed},
    {470.0, 608.0, output, 250.0, low_power_tv, licensed},
    {653.0, 657.0, eirp, 20.0, low_power_tv, duplex_gap},
    {941.5, 952.0, output, 1000.0, low_power_other, other_bands},
    {952.85, 956.25, output, 1000.0, low_power_other, other_bands},
    {956.45, 959.85, output, 1000.0, low_power_other, other_bands},
    {1435.0, 1525.0, output, 250.0, low_power_other, other_bands},
    {6875.0, 6900.0, output, 1000.0, low_power_other, other_bands},
    {7100.0, 7125.0, output, 1000.0, low_power_other, other_bands},
    {54.0, 72.0, eirp, 50.0, unlicensed, no_licence},
    {76.0, 88.0, eirp, 50.0, unlicensed, no_licence},
    {174.0, 216.0, eirp, 50.0, unlicensed, no_licence},
    {470.0, 608.0, eirp, 50.0, unlicensed, no_licence},
    {614.0, 616.0, eirp, 20.0, unlicensed, no_licence},
    {657.0, 663.0, eirp, 20.0, unlicensed, no_licence},
};

} // namespace

std::size_t limit_rules() noexcept { return sizeof rules / sizeof rules[0]; }
LimitRule limit_rule(std::size_t index) noexcept { return rules[index]; }

} // namespace lvb::tables
