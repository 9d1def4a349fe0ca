// The keys of a scenario that hold a number: which quantity each one gives, in which unit, and where it belongs.
#pragma once

#include <levelbook/levelbook.h>

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace desk {

struct Value;

/// One way to write one quantity. Both functions rise or both fall; from_library undoes to_library.
struct NumberKey {
    const char *name;
    std::int32_t field; ///< the LVB_FIELD_ that it fills
    double (*to_library)(double);
    double (*from_library)(double);
    std::uint32_t kinds; ///< one bit for each kind (of stage, pattern, path) that has a use for it
    const char *unit;    ///< as it is printed behind the number
};

/// A number as it stands in the file.
struct Given {
    const Value *value = nullptr;
    const NumberKey *key = nullptr;
};

/// Numbers by the library's field.
using GivenNumbers = std::map<std::int32_t, Given>;

const std::vector<NumberKey> &link_keys();
const std::vector<NumberKey> &stage_keys();
/// Of parts of a stage or link. A pattern's and a path's keys serve kinds: see kind_of_pattern and kind_of_path.
const std::vector<NumberKey> &pattern_keys();
const std::vector<NumberKey> &turn_keys();
const std::vector<NumberKey> &place_keys();
const std::vector<NumberKey> &path_keys();
const std::vector<NumberKey> &edge_keys();
const std::vector<NumberKey> &noise_keys();
const std::vector<NumberKey> &limit_keys();
const std::vector<NumberKey> &neighbour_keys();
/// The first column of a table.
const std::vector<NumberKey> &frequency_keys();
/// The second column of a cable's table.
const std::vector<NumberKey> &attenuation_keys();

/// What one of the scenario's objects may say in numbers.
struct Vocabulary {
    std::int32_t structure; ///< the LVB_STRUCT_ that it becomes
    const std::vector<NumberKey> *keys;
    const char *owner; ///< "a path"
};
/// Of every object that becomes one of the library's structs.
const std::vector<Vocabulary> &vocabularies();
/// The keys of a struct, also of a table's columns; null where it has none.
const std::vector<NumberKey> *keys_of_structure(std::int32_t structure);

/// 0 stands for "any kind" among kinds, so the kinds that begin with 0 are counted from 1 here.
constexpr std::int32_t kind_of_pattern(std::int32_t pattern) { return pattern + 1; }
constexpr std::int32_t kind_of_path(std::int32_t model) { return model + 1; }

bool serves(const NumberKey &key, std::int32_t kind);
/// The keys of a list that fill a field of a kind of stage (0: any).
std::vector<const NumberKey *> keys_of_field(const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind);
/// "length_m or length_ft": every way to write a field of a stage of this kind (0: of a link).
std::string ways_to_write(const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind);

/// What the two columns of a table may be named.
struct Columns {
    std::vector<const NumberKey *> points; ///< rising from row to row
    std::vector<const NumberKey *> values;
};

/// A table over frequency.
Columns over_frequency(std::vector<const NumberKey *> values);
/// The cuts of a pattern, and a body over its facing.
Columns over_azimuth();
Columns over_elevation();
Columns over_facing();

/// A key without its unit: "length" of "length_m".
std::string_view quantity_of(std::string_view key);

} // namespace desk
