#include "json_slips.hpp"

#include "text.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <vector>

namespace desk {
namespace {

// A text, a single sign, or a word: whatever else stands between signs and spaces. An empty one ends the file.
struct Token {
    std::size_t offset = 0;
    std::string_view bytes;

    std::size_t end() const { return offset + bytes.size(); }
    char first() const { return bytes.empty() ? '\0' : bytes.front(); }
    bool is_sign() const { return first() != '\0' && std::string_view("{}[],:").find(first()) != std::string::npos; }
    bool is_text() const { return first() == '"'; }
    bool is_word() const { return !bytes.empty() && !is_sign() && !is_text(); }
    bool begins_value() const { return !bytes.empty() && (!is_sign() || first() == '{' || first() == '['); }
    bool ends_value() const { return !bytes.empty() && (!is_sign() || first() == '}' || first() == ']'); }
};

constexpr std::size_t longest_number = 100; // that a person writes
constexpr std::string_view spaces = " \t\r\n";

// A text with its quotes; one that is not closed ends with its line.
std::size_t end_of_text(std::string_view text, std::size_t at) {
    for (std::size_t i = at + 1; i < text.size() && text[i] != '\n'; ++i) {
        if (text[i] == '\\') ++i;
        else if (text[i] == '"') return i + 1;
    }
    return std::min(text.find('\n', at), text.size());
}

Token next_token(std::string_view text, std::size_t from) {
    const std::size_t at = text.find_first_not_of(spaces, from);
    if (at == std::string::npos) return {text.size(), {}};
    std::size_t end = at + 1;
    if (text[at] == '"') end = end_of_text(text, at);
    else if (std::string_view("{}[],:").find(text[at]) == std::string::npos)
        end = std::min(text.find_first_of(" \t\r\n{}[],:\"", at), text.size());
    return {at, text.substr(at, end - at)};
}

// A number as a person may write it, and what stands behind it.
struct NumberParts {
    std::string_view sign, zeros, whole, point, decimals, power, rest;
};

NumberParts number_parts(std::string_view word) {
    const auto take = [&](std::string_view allowed, std::size_t most) {
        const std::size_t end = std::min({word.find_first_not_of(allowed), word.size(), most});
        const std::string_view taken = word.substr(0, end);
        word.remove_prefix(end);
        return taken;
    };
    constexpr std::string_view digits = "0123456789";
    constexpr std::size_t any = std::string_view::npos;
    NumberParts part;
    part.sign = take("+-", 1);
    part.zeros = take("0", any);
    part.whole = take(digits, any);
    part.point = take(".", 1);
    part.decimals = take(digits, any);
    const std::string_view from_power = word;
    const bool has_power = !take("eE", 1).empty();
    take("+-", has_power ? 1 : 0);
    if (has_power && !take(digits, any).empty()) part.power = from_power.substr(0, from_power.size() - word.size());
    else word = from_power;
    part.rest = word;
    return part;
}

// As JSON wants it: no plus, no needless zero in front, digits on both sides of a point.
bool is_well_formed(const NumberParts &part) {
    const bool whole = part.whole.empty() ? part.zeros.size() == 1 : part.zeros.empty();
    return whole && part.sign != "+" && part.point.empty() == part.decimals.empty() && part.rest.empty();
}

// What a word should have been.
std::string word_slip(std::string_view word) {
    constexpr std::array<std::string_view, 7> dashes = {"\u2212", "\u2010", "\u2011", "\u2012",
                                                        "\u2013", "\u2014", "\uFF0D"};
    for (const std::string_view dash : dashes)
        if (word.starts_with(dash)) return "this dash is not the minus sign -";
    for (const std::string_view quote : {"\u201C", "\u201D", "\u201E", "\u2018", "\u2019", "'"})
        if (word.starts_with(quote)) return "this quote is not the straight double one \"";
    if (word.starts_with("//") || word.starts_with("/*") || word.starts_with("#"))
        return "JSON has no comments: notes go into a note key";
    if (word.size() > longest_number) return "";
    const NumberParts part = number_parts(word);
    if (part.zeros.empty() && part.whole.empty() && part.decimals.empty()) return "";
    const std::string right = std::string(part.sign == "-" ? "-" : "") +
                              std::string(part.whole.empty() ? "0" : part.whole) +
                              (part.decimals.empty() ? "" : "." + std::string(part.decimals)) + std::string(part.power);
    if (!part.rest.empty()) {
        const bool letters = std::isalpha(static_cast<unsigned char>(part.rest.front())) != 0;
        return letters ? "the unit goes into the key's name: write " + right : "";
    }
    if (part.sign == "+") return "no plus sign: write " + right;
    return is_well_formed(part) ? "" : "write " + right;
}

bool is_number(const Token &token) {
    if (!token.is_word()) return false;
    return token.bytes.size() > longest_number || is_well_formed(number_parts(token.bytes)); // too long: nobody's slip
}

bool is_digits(const Token &token) {
    return token.is_word() &&
           std::all_of(token.bytes.begin(), token.bytes.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// A slip between two tokens, the last of which cannot stand where it does.
std::optional<Slip> slip_between(const std::vector<Token> &last, char container) {
    const Token &here = last.back();
    const Token before = last.size() > 1 ? last[last.size() - 2] : Token{};
    const Token earlier = last.size() > 2 ? last[last.size() - 3] : Token{};
    const bool in_object = container == '{';
    if (here.bytes.empty() && container != '\0')
        return Slip{here.offset,
                    std::string("the file ends before the ") + (in_object ? "}" : "]") + " that closes what was begun"};
    if (before.first() == ',' && is_digits(here) && is_number(earlier) && before.offset == earlier.end() &&
        here.offset == before.end() && in_object)
        return Slip{before.offset,
                    "a decimal comma: write " + std::string(earlier.bytes) + "." + std::string(here.bytes)};
    if (before.first() == ',' && (here.first() == '}' || here.first() == ']' || here.first() == ','))
        return Slip{before.offset, std::string("a comma too many before ") + here.first()};
    if (is_number(before) && here.is_word() && std::isalpha(static_cast<unsigned char>(here.first())) != 0)
        return Slip{here.offset, "the unit goes into the key's name: write " + std::string(before.bytes)};
    const bool before_is_key = in_object && before.is_text() && (earlier.first() == '{' || earlier.first() == ',');
    if (before_is_key && here.begins_value()) return Slip{here.offset, "a colon is missing before this"};
    if (container != '\0' && before.ends_value() && here.begins_value())
        return Slip{here.offset, "a comma is missing before this"};
    return std::nullopt;
}

bool is_literal(const Token &token) {
    return token.bytes == "true" || token.bytes == "false" || token.bytes == "null" || is_number(token);
}

// Follows the order of the tokens, as far as it is right.
class Order {
  public:
    /// False where the token cannot stand here.
    bool take(const Token &token) {
        const char sign = token.is_sign() ? token.first() : '\0';
        const bool closes = !open_.empty() && sign == (open_.back() == '{' ? '}' : ']');
        switch (next_) {
        case Next::key_or_close:
        case Next::key:
            if (token.is_text()) return go(Next::colon);
            return next_ == Next::key_or_close && closes && close();
        case Next::colon:
            return sign == ':' && go(Next::value);
        case Next::value_or_close:
            if (closes) return close();
            [[fallthrough]];
        case Next::value:
            if (sign == '{' || sign == '[') {
                open_.push_back(sign);
                return go(sign == '{' ? Next::key_or_close : Next::value_or_close);
            }
            return (token.is_text() || is_literal(token)) && go(Next::comma_or_close);
        case Next::comma_or_close:
            if (closes) return close();
            return sign == ',' && !open_.empty() && go(open_.back() == '{' ? Next::key : Next::value);
        }
        return false;
    }
    char container() const { return open_.empty() ? '\0' : open_.back(); }

  private:
    enum class Next { key_or_close, key, colon, value_or_close, value, comma_or_close };
    bool go(Next next) {
        next_ = next;
        return true;
    }
    bool close() {
        open_.pop_back();
        return go(Next::comma_or_close);
    }

    Next next_ = Next::value;
    std::vector<char> open_; // brackets
};

} // namespace

std::optional<Slip> find_slip(std::string_view text, std::size_t failed) {
    Order order;
    std::vector<Token> tokens;
    for (std::size_t at = begin_of(text);; at = tokens.back().end()) {
        const Token token = next_token(text, at);
        tokens.push_back(token);
        if (token.offset > failed && !token.bytes.empty())
            return std::nullopt; // what the parser did not take looked right here
        const bool closed = token.bytes.size() > 1 && token.bytes.back() == '"';
        if (token.is_text() && !closed)
            return Slip{token.offset, "this text does not end on its line: a \" is missing"};
        if (!order.take(token)) break;
    }
    const Token &last = tokens.back();
    const std::string words = last.is_word() ? word_slip(last.bytes) : "";
    if (!words.empty()) return Slip{last.offset, words};
    return slip_between(tokens, order.container());
}

} // namespace desk
