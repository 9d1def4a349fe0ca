// Limits of radiated power and of exposure, and the cautions that a host must show.
#include "tables/limits.hpp"
#include "chain/transmit.hpp"
#include "door/check_chain.hpp"
#include "door/struct_fields.hpp"
#include "limits/exposure.hpp"
#include "limits/power.hpp"
#include "tables/cautions.hpp"

namespace lvb::door {
namespace {

using math::not_a_number;
using units::Quantity;

static_assert(static_cast<int>(Quantity::transmitter_output) == LVB_QUANTITY_TRANSMITTER_OUTPUT &&
              static_cast<int>(Quantity::eirp) == LVB_QUANTITY_EIRP);
static_assert(static_cast<int>(limits::Verdict::not_covered) == LVB_LIMIT_NOT_COVERED);

bool take_limit(Refusal &refusal, const lvb_limit *lent, lvb_limit &limit) noexcept {
    const Place place{LVB_STRUCT_LIMIT};
    if (!take(refusal, lent, limit, place, LVB_FIELD_LIMIT)) return false;
    if (limit.quantity == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_QUANTITY, 0.0, LVB_QUANTITY_TRANSMITTER_OUTPUT,
                      LVB_QUANTITY_EIRP);
    if (limit.quantity < LVB_QUANTITY_TRANSMITTER_OUTPUT || limit.quantity > LVB_QUANTITY_EIRP)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_QUANTITY, limit.quantity,
                      LVB_QUANTITY_TRANSMITTER_OUTPUT, LVB_QUANTITY_EIRP);
    if (!check_numbers(refusal, limit, limit_fields, place)) return false;
    return limit.highest_mhz == 0.0 || limit.highest_mhz >= limit.lowest_mhz ||
           refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_HIGHEST_MHZ, limit.highest_mhz, limit.lowest_mhz,
                  rule_frequency_range.maximum);
}

bool covers(const lvb_limit &limit, double frequency_mhz) noexcept {
    return frequency_mhz >= limit.lowest_mhz && (limit.highest_mhz == 0.0 || frequency_mhz <= limit.highest_mhz);
}

lvb_limit_result result_of(const lvb_limit &limit, const chain::Transmit &transmit, bool covered) noexcept {
    const chain::Power power = transmit.power(static_cast<Quantity>(limit.quantity));
    const double room = limit.limit_dbm - power.level_dbm;
    lvb_limit_result out{};
    out.verdict = covered ? static_cast<std::int32_t>(limits::judge(room, power.worst_db)) : LVB_LIMIT_NOT_COVERED;
    out.level_dbm = power.level_dbm;
    out.worst_db = power.worst_db;
    out.room_db = covered ? room : not_a_number;
    out.transmitter_output_dbm = transmit.power(Quantity::transmitter_output).level_dbm;
    const bool radiates = transmit.has_antenna();
    out.antenna_input_dbm = radiates ? transmit.power(Quantity::antenna_input).level_dbm : not_a_number;
    out.erp_dbm = transmit.power(Quantity::erp).level_dbm;
    out.eirp_dbm = transmit.power(Quantity::eirp).level_dbm;
    return out;
}

bool check_limit(Refusal &refusal, const lvb_link *lent_link, const lvb_limit *lent_limit,
                 lvb_limit_result *result) noexcept {
    lvb_link link;
    lvb_limit limit{};
    chain::Conditions conditions;
    if (!take_link(refusal, lent_link, link, conditions) || !take_limit(refusal, lent_limit, limit) ||
        !check_result(refusal, result, LVB_STRUCT_LIMIT_RESULT, LVB_FIELD_RESULT))
        return false;
    chain::Ledger ledger(conditions);
    chain::Transmit transmit;
    if (!walk_stages(refusal, link,
                     [&](const chain::Stage &stage) noexcept { transmit.take(stage.kind, ledger.enter(stage)); }))
        return false;
    transmit.close(ledger.close());
    // no number: behind no antenna, and of what a radiating cable radiates
    const double level_dbm = transmit.power(static_cast<Quantity>(limit.quantity)).level_dbm;
    if (limit.quantity != LVB_QUANTITY_TRANSMITTER_OUTPUT && (!transmit.has_antenna() || math::is_nan(level_dbm)))
        return refuse(refusal, LVB_E_NO_TRANSMIT_ANTENNA, {LVB_STRUCT_LIMIT}, LVB_FIELD_QUANTITY, limit.quantity);
    lvb_limit_result out = result_of(limit, transmit, covers(limit, link.frequency_mhz));
    give(result, out);
    return true;
}

bool describe_rule(Refusal &refusal, std::uint32_t index, lvb_limit_rule *rule) noexcept {
    if (!check_result(refusal, rule, LVB_STRUCT_LIMIT_RULE, LVB_FIELD_RULE)) return false;
    const std::size_t count = tables::limit_rules();
    if (index >= count)
        return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_RULE_INDEX, index, 0.0, static_cast<double>(count - 1));
    const tables::LimitRule found = tables::limit_rule(index);
    lvb_limit_rule out{};
    out.quantity = static_cast<std::int32_t>(found.quantity);
    out.lowest_mhz = found.lowest_mhz;
    out.highest_mhz = found.highest_mhz;
    out.limit_dbm = math::ten_log10(found.power_mw);
    out.power_mw = found.power_mw;
    out.country = tables::limit_country;
    out.citation = found.citation;
    out.edition = tables::limit_edition;
    out.remark = found.remark;
    give(rule, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_check_limit(const lvb_link *link, const lvb_limit *limit, lvb_limit_result *result, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return check_limit(refusal, link, limit, result); });
}

uint32_t lvb_limit_rule_count(void) { return static_cast<uint32_t>(lvb::tables::limit_rules()); }

lvb_status lvb_describe_limit_rule(uint32_t rule_index, lvb_limit_rule *rule, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return describe_rule(refusal, rule_index, rule); });
}

double lvb_exposure_limit_w_per_m2(int32_t exposure, int32_t audience, double frequency_mhz) {
    using namespace lvb;
    const bool known = (exposure == LVB_EXPOSURE_47_CFR_1_1310 || exposure == LVB_EXPOSURE_ICNIRP_2020) &&
                       (audience == LVB_AUDIENCE_GENERAL || audience == LVB_AUDIENCE_OCCUPATIONAL);
    const limits::ExposureRule &rule = exposure == LVB_EXPOSURE_ICNIRP_2020 ? limits::icnirp_2020 : limits::cfr_1_1310;
    const bool inside = frequency_mhz >= limits::lowest_exposure_mhz && frequency_mhz <= rule.highest_mhz;
    return known && inside ? limits::exposure_limit_w_per_m2(rule, audience == LVB_AUDIENCE_OCCUPATIONAL, frequency_mhz)
                           : math::not_a_number;
}

uint32_t lvb_caution_count(void) { return static_cast<uint32_t>(lvb::tables::cautions); }

const char *lvb_caution_text(uint32_t caution_index) {
    using namespace lvb;
    return caution_index < tables::cautions ? tables::caution(caution_index) : "";
}

} // extern "C"
