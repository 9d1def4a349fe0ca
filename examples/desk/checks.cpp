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
        document_.refuse_key(*member, in_quotes(member->key) + " is no key of " + where + "; the nearest is " +
                                          in_quotes(nearest(member->key, known)));
    }
}

std::int32_t Checks::choose(const Value &value, const std::vector<std::string> &known, const char *what) const {
    const std::string word = text(value);
    for (std::size_t i = 0; i < known.size(); ++i)
        if (known[i] == word) return static_cast<std::int32_t>(i);
    document_.refuse(value, in_quotes(word) + " is no " + what + "; the nearest is " + in_quotes(nearest(word, known)));
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
