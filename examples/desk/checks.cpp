#include "checks.hpp"

#include <algorithm>

namespace desk {
namespace {

using Kind = Value::Kind;

constexpr std::size_t longest_text = 1000;

const char *name_of(Kind kind) {
    switch (kind) {
    case Kind::null:
        return "null";
    case Kind::boolean:
        return "true or false";
    case Kind::number:
        return "a number";
    case Kind::text:
        return "a text";
    case Kind::list:
        return "a list";
    case Kind::object:
        return "an object";
    }
    return "unknown";
}

// A quantity that stands without its unit, or with one that is not known.
std::string missing_unit(const std::string &key, const std::vector<std::string> &known) {
    std::vector<std::string> ways;
    for (const std::string &way : known) {
        const std::string_view quantity = quantity_of(way);
        if (quantity == way || (key != quantity && !key.starts_with(std::string(quantity) + "_"))) continue;
        constexpr std::size_t longest_unit = 4;
        const std::string rest = key.size() > quantity.size() ? key.substr(quantity.size() + 1) : "";
        if (rest.size() > longest_unit || rest.find('_') != std::string::npos) continue;
        ways.push_back(way);
    }
    return !ways.empty() ? in_quotes(key) + " needs its unit: " + listed(ways) : "";
}

bool stage_has(const std::string &key) {
    const std::vector<NumberKey> &keys = stage_keys();
    return std::any_of(keys.begin(), keys.end(), [&](const NumberKey &number) { return key == number.name; });
}

// Where a key belongs that is right in another place; empty where no place has it.
std::string belongs_elsewhere(const std::string &key) {
    if (key == "cable_type" || key == "attenuation_table") return key + " belongs to 'cable'";
    for (const Vocabulary &vocabulary : vocabularies()) {
        if (vocabulary.keys == &stage_keys()) continue;
        for (const NumberKey &number : *vocabulary.keys)
            if (key == number.name && !stage_has(key)) return key + " belongs to " + vocabulary.owner;
    }
    for (const NumberKey &number : stage_keys()) {
        if (key != number.name) continue;
        std::vector<std::string> kinds;
        for (std::int32_t kind = LVB_KIND_SOURCE; kind <= LVB_KIND_RECEIVER; ++kind)
            if (serves(number, kind)) kinds.emplace_back(lvb_kind_name(kind));
        return key + " belongs to " + listed(kinds);
    }
    return "";
}

} // namespace

void Checks::expect(const Value &value, Kind kind) const {
    if (value.kind != kind)
        document_.refuse(value, std::string("this must be ") + name_of(kind) + ", not " + name_of(value.kind));
}

const Value &Checks::need(const Value &object, const char *key) const {
    const Value *value = object.find(key);
    if (value == nullptr) document_.refuse(object, std::string(key) + " is missing");
    return *value;
}

std::string Checks::text(const Value &value) const {
    expect(value, Kind::text);
    if (value.text.empty()) document_.refuse(value, "this text is empty");
    if (value.text.size() > longest_text)
        document_.refuse(value, "this text is longer than " + std::to_string(longest_text) + " bytes");
    return value.text;
}

std::string Checks::text_or_empty(const Value &object, const char *key) const {
    const Value *value = object.find(key);
    return value == nullptr ? "" : text(*value);
}

double Checks::number(const Value &value) const {
    expect(value, Kind::number);
    return value.number;
}

void Checks::check_keys(const Value &object, const std::vector<std::string> &known, const std::string &where) const {
    for (const Value *member : object.items) {
        if (std::find(known.begin(), known.end(), member->key) != known.end()) continue;
        const std::string units = missing_unit(member->key, known);
        if (!units.empty()) document_.refuse_key(*member, units);
        const std::string other = belongs_elsewhere(member->key);
        std::string quantity(quantity_of(member->key));
        std::replace(quantity.begin(), quantity.end(), '_', ' ');
        document_.refuse_key(*member,
                             in_quotes(member->key) + " is no key of " + where +
                                 (other.empty() ? suggestion(member->key, known, "; its keys are " + listed(known))
                                                : ", which has no " + quantity + "; " + other));
    }
}

std::int32_t Checks::choose(const Value &value, const std::vector<std::string> &known, const char *what,
                            const std::string &meanings) const {
    const std::string word = text(value);
    for (std::size_t i = 0; i < known.size(); ++i)
        if (known[i] == word) return static_cast<std::int32_t>(i);
    document_.refuse(value,
                     in_quotes(word) + " is no " + what +
                         suggestion(word, known, "; there are " + (meanings.empty() ? listed(known) : meanings)));
}

std::vector<std::string> with_names(std::vector<std::string> names, const std::vector<NumberKey> &keys,
                                    std::int32_t kind) {
    for (const NumberKey &key : keys)
        if (serves(key, kind)) names.emplace_back(key.name);
    return names;
}

std::vector<std::string> words(const char *(*name)(std::int32_t), std::int32_t first) {
    std::vector<std::string> all;
    for (std::int32_t i = first; std::string_view(name(i)) != "unknown"; ++i) all.emplace_back(name(i));
    return all;
}

} // namespace desk
