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
    std::uint32_t kinds; ///< stages: one bit for each LVB_KIND_ that has a use for it
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
/// The first column of a table.
const std::vector<NumberKey> &frequency_keys();
/// The second column of a cable's table.
const std::vector<NumberKey> &attenuation_keys();

bool serves(const NumberKey &key, std::int32_t kind);
/// "length_m or length_ft": every way to write a field of a stage of this kind (0: of a link).
std::string ways_to_write(const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind);

/// A key without its unit: "length" of "length_m".
std::string_view quantity_of(std::string_view key);

} // namespace desk
