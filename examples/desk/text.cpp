#include "text.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <cstdarg>
#include <cstdio>
#include <numeric>

namespace desk {

std::string format(const char *pattern, ...) {
    std::va_list list;
    va_start(list, pattern);
    std::va_list again;
    va_copy(again, list);
    const int length = std::vsnprintf(nullptr, 0, pattern, list);
    std::string text(static_cast<std::size_t>(std::max(length, 0)), '\0');
    std::vsnprintf(text.data(), text.size() + 1, pattern, again);
    va_end(again);
    va_end(list);
    return text;
}

std::string ascii(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool continues = (byte & 0xC0u) == 0x80u; // a later byte of one UTF-8 character
        if (byte >= 0x20 && byte < 0x7F) out += c;
        else if (!continues) out += '?';
    }
    return out;
}

std::string shorten(const std::string &text, std::size_t width) {
    return text.size() <= width ? text : text.substr(0, width - 3) + "...";
}

std::string in_quotes(std::string_view name) {
    constexpr std::size_t longest = 40;
    return "'" + shorten(ascii(name.substr(0, 4 * longest)), longest) + "'";
}

std::string wrap(std::string_view words, std::size_t width, const std::string &first, const std::string &next) {
    std::string out;
    std::string line = first;
    bool fresh = true; // nothing but the margin on this line yet
    const auto put = [&](std::string_view word) {
        if (!fresh && line.size() + 1 + word.size() > width) {
            out += line + '\n';
            line = next;
            fresh = true;
        }
        if (!fresh) line += ' ';
        line += word;
        fresh = false;
    };
    while (!words.empty()) {
        const std::size_t space = std::min(words.find(' '), words.size());
        std::string_view word = words.substr(0, space);
        words.remove_prefix(std::min(space + 1, words.size()));
        const std::size_t room = width - std::max(first.size(), next.size());
        for (; word.size() > room; word.remove_prefix(room)) put(word.substr(0, room)); // a word wider than the page
        if (!word.empty()) put(word);
    }
    return out + line + '\n';
}

std::string labelled(const std::string &name, const std::string &words) {
    return wrap(words, page_columns, format("  %-9s ", name.c_str()), std::string(12, ' '));
}

std::string plain(double number) {
    if (std::isnan(number)) return "not a number";
    if (std::isinf(number)) return number < 0.0 ? "-infinity" : "infinity";
    return format("%.10g", number + 0.0); // + 0.0 takes the sign off a zero
}

std::string exact(double number) {
    char digits[32];
    const auto end = std::to_chars(digits, digits + sizeof digits, number + 0.0).ptr; // + 0.0 takes the sign off a zero
    return {digits, end};
}

std::optional<double> number_in(std::string_view text) {
    if (text.starts_with('+') && !text.starts_with("+-")) text.remove_prefix(1);
    double number = 0.0;
    const char *end = text.data() + text.size();
    const auto [rest, error] = std::from_chars(text.data(), end, number);
    if (error != std::errc() || rest != end || !std::isfinite(number)) return std::nullopt;
    return number;
}

std::size_t begin_of(std::string_view text) { return text.starts_with("\xEF\xBB\xBF") ? 3 : 0; }

std::string lower_case(std::string_view text) {
    std::string out(text);
    for (char &c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

namespace {
// Stands for infinity among hundredths, beyond every level; sums with ordinary levels stay near it.
constexpr std::int64_t endless = std::int64_t{1} << 60;
} // namespace

std::int64_t hundredths(double value) {
    if (std::isinf(value)) return value < 0.0 ? -endless : endless;
    return std::llround(value * 100.0);
}

bool is_endless(std::int64_t hundredths) { return std::abs(hundredths) > endless / 2; }

std::string two_decimals(std::int64_t value, bool sign) {
    const std::int64_t size = std::abs(value);
    if (is_endless(value)) return value < 0 ? "-infinite" : sign ? "+infinite" : "infinite";
    const char *before = value < 0 ? "-" : (sign ? "+" : "");
    return format("%s%lld.%02lld", before, static_cast<long long>(size / 100), static_cast<long long>(size % 100));
}

namespace {

// Letters and digits only, in lower case, and not more than can be a name.
std::string folded(std::string_view text) {
    std::string out;
    for (const char c : text.substr(0, 100))
        if (std::isalnum(static_cast<unsigned char>(c)) != 0)
            out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return out;
}

// Levenshtein distance.
std::size_t changes(const std::string &from, const std::string &to) {
    std::vector<std::size_t> row(to.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < from.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < to.size(); ++j) {
            const std::size_t changed = diagonal + (from[i] == to[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({changed, diagonal + 1, row[j] + 1});
        }
    }
    return row.back();
}

} // namespace

std::string two(double value) { return std::isnan(value) ? "-" : two_decimals(hundredths(value)); }

std::string signed_two(double value) { return std::isnan(value) ? "-" : two_decimals(hundredths(value), true); }

std::string share_words(double share) {
    constexpr double least = 1e-6, most = 0.995;
    if (share > 0.0 && share < least) return "less than 0.0001 %";
    if (share > most && share < 1.0) return "more than 99.5 %";
    return share == 1.0 ? "100 %" : format("%.2g %%", 100.0 * share);
}

std::string nearest(std::string_view name, const std::vector<std::string> &known) {
    const std::string wanted = folded(name);
    constexpr std::size_t far_off = 1000;
    std::string best;
    std::size_t least = 0;
    for (const std::string &candidate : known) {
        const std::string other = folded(candidate);
        const bool holds = wanted.size() > 1 && other.find(wanted) != std::string::npos;
        const std::size_t distance = changes(wanted, other) + (holds ? 0 : far_off);
        if (!best.empty() && distance >= least) continue;
        best = candidate;
        least = distance;
    }
    return best;
}

bool is_near(std::string_view name, std::string_view candidate) {
    const std::string wanted = folded(name);
    const std::string other = folded(candidate);
    if (wanted.size() > 1 && other.find(wanted) != std::string::npos) return true;
    return changes(wanted, other) <= std::max<std::size_t>(1, std::min(wanted.size(), other.size()) / 3);
}

std::string suggestion(std::string_view name, const std::vector<std::string> &known, const std::string &otherwise) {
    const std::string near = nearest(name, known);
    return !near.empty() && is_near(name, near) ? "; the nearest is " + in_quotes(near) : otherwise;
}

std::string listed(const std::vector<std::string> &names) {
    constexpr std::size_t longest = 300;
    std::string list;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string name = (i == 0 ? "" : ", ") + in_quotes(names[i]);
        if (list.size() + name.size() > longest) return list + " and " + std::to_string(names.size() - i) + " more";
        list += name;
    }
    return list;
}

void refuse_name(const std::string &name, const std::vector<std::string> &known, const std::string &kind) {
    const std::string all = "; there " + std::string(known.size() == 1 ? "is " : "are ") + listed(known);
    if (name.empty()) throw Refusal("the name of a " + kind + " is missing" + all);
    throw Refusal("no " + kind + " is named " + in_quotes(name) + suggestion(name, known, "") + all);
}

} // namespace desk
