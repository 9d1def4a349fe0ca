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

TEST(Names, OfInstructionsAndEnds) {
    each_value_once(constants("LVB_INSTRUCTIONS_"));
    EXPECT_EQ(constants("LVB_INSTRUCTIONS_").size(), 5u);
    each_value_once(constants("LVB_END_"));
    EXPECT_EQ(constants("LVB_END_").size(), 2u);
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

template <class Name>
void no_unknown(const char *prefix, Name name, std::int32_t first) {
    const auto all = constants(prefix);
    EXPECT_GE(all.size(), 3u) << prefix;
    each_value_once(all);
    std::set<std::string> names;
    for (const auto &[constant, value] : all) {
        EXPECT_GE(value, first);
        EXPECT_STRNE(name(value), "unknown") << constant;
        EXPECT_TRUE(names.insert(name(value)).second) << constant << " has the name of another";
    }
}

TEST(Names, OfKindsBasesReferencesZonesVerdictsAndQuantities) {
    no_unknown("LVB_KIND_", lvb_kind_name, 1);
    no_unknown("LVB_BASIS_", lvb_basis_name, 0);
    no_unknown("LVB_REFERENCE_", lvb_reference_name, 1);
    no_unknown("LVB_ZONE_", lvb_zone_name, 0);
    no_unknown("LVB_VERDICT_", lvb_verdict_name, 0);
    no_unknown("LVB_QUANTITY_", lvb_quantity_name, 1);
    no_unknown("LVB_LIMIT_", lvb_limit_verdict_name, 1);
}

} // namespace
