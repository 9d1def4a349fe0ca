// The constants of the header, read from its text, and what the library says of them.
#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

namespace {

std::string header() {
    std::ifstream file(LEVELBOOK_HEADER);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// "PREFIX_NAME = value" of every constant with the prefix.
std::map<std::string, std::int32_t> constants(const std::string &prefix) {
    const std::string text = header();
    const std::regex one("\\b(" + prefix + "[A-Z0-9_]+) = (-?[0-9]+)");
    std::map<std::string, std::int32_t> found;
    for (std::sregex_iterator match(text.begin(), text.end(), one), end; match != end; ++match)
        EXPECT_TRUE(found.emplace((*match)[1], std::stoi((*match)[2])).second) << (*match)[1] << " twice";
    return found;
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

void each_value_once(const std::map<std::string, std::int32_t> &all) {
    std::set<std::int32_t> values;
    for (const auto &[name, value] : all) EXPECT_TRUE(values.insert(value).second) << name << " has a value of another";
}

TEST(Names, OfEveryStatus) {
    const auto all = constants("LVB_E_");
    EXPECT_GE(all.size(), 31u);
    each_value_once(all);
    for (const auto &[name, value] : all) {
        EXPECT_EQ(lvb_status_name(value), name);
        EXPECT_LT(value, 0);
    }
    EXPECT_STREQ(lvb_status_name(LVB_OK), "LVB_OK");
    int known = 0;
    for (lvb_status status = -1000; status <= 1000; ++status)
        known += std::string(lvb_status_name(status)) != "unknown";
    EXPECT_EQ(known, static_cast<int>(all.size()) + 1); // no name without a constant
}

/// Every word of the header before a semicolon, a comma or a bracket: its members and arguments, and other words.
std::set<std::string> members_and_arguments() {
    std::set<std::string> found;
    std::string word;
    for (const char c : header()) {
        if (c == ';' || c == ',' || c == ')') found.insert(word);
        if (std::isalnum(static_cast<unsigned char>(c)) == 0 && c != '_') word.clear();
        else word += c;
    }
    return found;
}

TEST(Names, OfEveryField) {
    const auto all = constants("LVB_FIELD_");
    const std::set<std::string> told = members_and_arguments();
    EXPECT_GE(all.size(), 55u);
    each_value_once(all);
    for (const auto &[name, value] : all) {
        const std::string field = lower(name.substr(std::string("LVB_FIELD_").size()));
        if (value != LVB_FIELD_NONE) {
            EXPECT_EQ(lvb_field_name(value), field);
        }
        // it is a member or an argument of the header
        if (value != LVB_FIELD_NONE) {
            EXPECT_TRUE(told.contains(field)) << field;
        }
    }
    int known = 0;
    for (std::int32_t field = -1000; field <= 1000; ++field)
        known += field != LVB_FIELD_NONE && std::string(lvb_field_name(field)) != "unknown";
    EXPECT_EQ(known, static_cast<int>(all.size()) - 1);
}

TEST(Names, OfEveryStruct) {
    const auto all = constants("LVB_STRUCT_");
    EXPECT_GE(all.size(), 17u);
    each_value_once(all);
    for (const auto &[name, value] : all) {
        if (value == LVB_STRUCT_NONE) continue;
        EXPECT_NE(lvb_struct_size(value), 0u) << name;
        const std::string type = "lvb_" + lower(name.substr(std::string("LVB_STRUCT_").size()));
        EXPECT_EQ(lvb_struct_name(value), type);
        EXPECT_NE(header().find("typedef struct " + type + " {"), std::string::npos) << type;
        // a fault names it as the header does
        lvb_fault fault{};
        fault.size = sizeof fault;
        fault.status = LVB_E_NULL;
        fault.structure = value;
        fault.field = LVB_FIELD_SIZE;
        fault.stage = fault.row = -1;
        char text[256];
        lvb_fault_text(&fault, text, sizeof text);
        EXPECT_EQ(text, type + ".size is null, but must be given.");
    }
    for (std::int32_t structure = -10; structure <= 1000; ++structure)
        EXPECT_EQ(std::string(lvb_struct_name(structure)) == "unknown", lvb_struct_size(structure) == 0) << structure;
    const std::string text = header();
    const std::regex one("typedef struct (lvb_[a-z_]+) \\{");
    EXPECT_EQ(static_cast<std::size_t>(
                  std::distance(std::sregex_iterator(text.begin(), text.end(), one), std::sregex_iterator())),
              all.size() - 1); // no struct without a number
}

TEST(Names, OfEveryFormula) {
    const auto all = constants("LVB_FORMULA_");
    EXPECT_GE(all.size(), 77u);
    each_value_once(all);
    for (const auto &[name, value] : all) { // numbers without a gap, each with its function
        EXPECT_GE(value, 0);
        EXPECT_LT(value, static_cast<std::int32_t>(all.size()));
        if (value == LVB_FORMULA_NONE) continue;
        const std::string function = "lvb_" + lower(name.substr(std::string("LVB_FORMULA_").size()));
        EXPECT_NE(header().find("LVB_API double " + function + "("), std::string::npos) << function;
        EXPECT_EQ("lvb_" + std::string(lvb_formula_name(value)), function);
        EXPECT_EQ(lvb_formula_from_name(lvb_formula_name(value)), value);
    }
    for (const std::int32_t none : {-1, 0, static_cast<std::int32_t>(all.size())})
        EXPECT_STREQ(lvb_formula_name(none), "unknown") << none;
    for (const char *none :
         {"", "unknown", "dbm_from_m", "dbm_from_mw ", "DBM_FROM_MW", static_cast<const char *>(nullptr)})
        EXPECT_EQ(lvb_formula_from_name(none), LVB_FORMULA_NONE);
}

TEST(Names, OfInstructions) {
    each_value_once(constants("LVB_INSTRUCTIONS_"));
    EXPECT_EQ(constants("LVB_INSTRUCTIONS_").size(), 5u);
}

TEST(Names, OfEveryCable) {
    const auto all = constants("LVB_CABLE_");
    each_value_once(all);
    EXPECT_EQ(all.size(), lvb_cable_type_count() + 1u); // with LVB_CABLE_NONE
    for (const auto &[name, value] : all) {
        if (value == LVB_CABLE_NONE) continue;
        lvb_cable_info info{};
        info.size = sizeof info;
        ASSERT_EQ(lvb_describe_cable(value, &info, nullptr), LVB_OK) << name;
        // the constant spells the designation: letters and digits in the same order
        std::string spelled, designation;
        for (const char c : lower(name.substr(std::string("LVB_CABLE_").size())))
            if (std::isalnum(static_cast<unsigned char>(c))) spelled += c;
        for (const char c : lower(info.name))
            if (std::isalnum(static_cast<unsigned char>(c))) designation += c;
        // "foam 0.240 in" is FOAM_240_IN
        if (designation.find("foam0") == 0) designation.erase(4, 1);
        EXPECT_EQ(spelled, designation);
    }
}

/// The families of constants whose names are plain words, and the function that gives them.
using NameOf = const char *(*)(std::int32_t);
const std::map<std::string, NameOf> &plain_names() {
    static const std::map<std::string, NameOf> all = {
        {"LVB_KIND_", lvb_kind_name},
        {"LVB_BASIS_", lvb_basis_name},
        {"LVB_REFERENCE_", lvb_reference_name},
        {"LVB_ZONE_", lvb_zone_name},
        {"LVB_VERDICT_", lvb_verdict_name},
        {"LVB_DECIDED_BY_", lvb_decided_by_name},
        {"LVB_END_", lvb_end_name},
        {"LVB_NOTE_", [](std::int32_t note) { return lvb_note_name(static_cast<std::uint32_t>(note)); }},
        {"LVB_PATTERN_", lvb_pattern_name},
        {"LVB_PATH_", lvb_path_name},
        {"LVB_ENVIRONMENT_", lvb_environment_name},
        {"LVB_POLARIZATION_", lvb_polarization_name},
        {"LVB_PLACE_", lvb_place_name},
        {"LVB_QUANTITY_", lvb_quantity_name},
        {"LVB_LIMIT_", lvb_limit_verdict_name},
        {"LVB_EXPOSURE_", lvb_exposure_name},
        {"LVB_AUDIENCE_", lvb_audience_name},
        {"LVB_DIRECTION_", lvb_direction_name},
        {"LVB_COMBINE_", lvb_combine_name},
        {"LVB_FACING_", lvb_facing_name},
        {"LVB_FADING_", lvb_fading_name},
        {"LVB_GOAL_", lvb_goal_name},
        {"LVB_TOLERANCES_", lvb_tolerances_name},
        {"LVB_SOLUTION_", lvb_solution_name},
        {"LVB_PAIR_", lvb_pair_name},
        {"LVB_LAW_", lvb_law_name},
        {"LVB_OUTCOME_", lvb_outcome_name},
    };
    return all;
}

TEST(Names, OfEveryPlainValueAndOfNoOther) {
    for (const auto &[prefix, name] : plain_names()) {
        const auto all = constants(prefix);
        EXPECT_GE(all.size(), 2u) << prefix;
        each_value_once(all);
        std::set<std::int32_t> values;
        std::set<std::string> names;
        for (const auto &[constant, value] : all) {
            values.insert(value);
            EXPECT_STRNE(name(value), "unknown") << constant;
            EXPECT_TRUE(names.insert(name(value)).second) << constant << " has the name of another";
        }
        for (std::int32_t value = -10; value <= 100000; ++value)
            if (!values.contains(value)) {
                ASSERT_STREQ(name(value), "unknown") << prefix << value;
            }
    }
}

TEST(Names, OfInstructionsAskedForOrNot) {
    for (const std::int32_t set : {LVB_INSTRUCTIONS_BASELINE, LVB_INSTRUCTIONS_AVX2, LVB_INSTRUCTIONS_AVX512})
        EXPECT_STREQ(lvb_instructions_name(set | LVB_INSTRUCTIONS_ASKED), lvb_instructions_name(set));
    EXPECT_STREQ(lvb_instructions_name(LVB_INSTRUCTIONS_ASKED), "unknown");
    EXPECT_STREQ(lvb_instructions_name(LVB_INSTRUCTIONS_AVX512 + 1), "unknown");
    EXPECT_STREQ(lvb_instructions_name(lvb_best_instructions() | 512), "unknown");
    EXPECT_STRNE(lvb_instructions_name(lvb_best_instructions()), "unknown");
}

// A family without a function of its own stands here with what tells of it, or with why nobody is shown it.
TEST(Names, OfEveryFamily) {
    const std::set<std::string> others = {
        "LVB_OK",            // lvb_status_name, as LVB_E_
        "LVB_E_",            // lvb_status_name
        "LVB_STRUCT_",       // lvb_struct_name
        "LVB_FIELD_",        // lvb_field_name
        "LVB_FORMULA_",      // lvb_formula_name
        "LVB_INSTRUCTIONS_", // lvb_instructions_name
        "LVB_CABLE_",        // lvb_describe_cable
        "LVB_MAX_",          // counts
        "LVB_STAGE_",        // lvb_fault_text
        "LVB_STATED_",       // bits that a host sets; lvb_fault_text names them
        "LVB_WORST_",        // bits that a host sets
    };
    for (const auto &each : constants("LVB_")) {
        const std::string &constant = each.first;
        const auto begins_it = [&](const std::string &prefix) { return constant.rfind(prefix, 0) == 0; };
        const bool plain = std::any_of(plain_names().begin(), plain_names().end(),
                                       [&](const auto &family) { return begins_it(family.first); });
        EXPECT_TRUE(plain || std::any_of(others.begin(), others.end(), begins_it)) << constant;
    }
}

} // namespace
