// Small helpers for plain ASCII text.
#pragma once

#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace desk {

/// Anything that the person who runs the program must put right; its text is one line, told on stderr with exit code 2.
struct Refusal : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// A file that is not to be had at all, as against one with something wrong in it.
struct Unreadable : Refusal {
    using Refusal::Refusal;
};

/// printf into a string.
[[gnu::format(printf, 1, 2)]] std::string format(const char *pattern, ...);

/// Printable ASCII only: every other character becomes one question mark.
std::string ascii(std::string_view text);

/// At most `width` characters, the last three being dots where something was cut.
std::string shorten(const std::string &text, std::size_t width);

/// A name that a person wrote, fit for an error line: quoted, ASCII, short.
std::string in_quotes(std::string_view name);

/// The words in lines of at most `width` characters; the first begins with `first`, the others with `next`.
std::string wrap(std::string_view words, std::size_t width, const std::string &first, const std::string &next);

/// The width of a printed page.
constexpr std::size_t page_columns = 100;

/// A line of the page with a name before its words: "  Far end:  at 22 m ...".
std::string labelled(const std::string &name, const std::string &words);

/// A number as a person writes it, up to ten significant digits.
std::string plain(double number);

/// The shortest digits that read back as the same number.
std::string exact(double number);

/// The finite number that a text is from end to end, a plus before it allowed; nothing for any other text, in every
/// locale.
std::optional<double> number_in(std::string_view text);

/// Where a text begins: behind the byte-order mark that some editors and spreadsheets put before UTF-8.
std::size_t begin_of(std::string_view text);

/// ASCII letters in lower case; all else as it is.
std::string lower_case(std::string_view text);

/// Hundredths, rounded half away from zero: the unit in which all levels are printed and added.
std::int64_t hundredths(double value);

/// Whether hundredths stand for an infinite value.
bool is_endless(std::int64_t hundredths);

/// Hundredths as text with two decimals, with a plus before gains when `sign` is set.
std::string two_decimals(std::int64_t hundredths, bool sign = false);
/// "-3.20"; a dash for NaN.
std::string two(double value);
std::string signed_two(double value); ///< "+3.20"

/// A share of places and times in percent, with two digits, but never 0 or 100 % where it is not quite so.
std::string share_words(double share);

/// The known name that holds `name`, or else takes the fewest changes of a letter to reach from it; letter case and
/// signs do not count. Empty when nothing is known.
std::string nearest(std::string_view name, const std::vector<std::string> &known);

/// Whether a person who wrote `name` can have meant the candidate: it holds the name, or differs in few letters.
bool is_near(std::string_view name, std::string_view candidate);

/// "; the nearest is 'cable'" where something is near, or else the other words.
std::string suggestion(std::string_view name, const std::vector<std::string> &known, const std::string &otherwise);

/// Names in quotes with commas between, and how many more there are where that would be very long.
std::string listed(const std::vector<std::string> &names);

/// Throws the Refusal of a name that is missing or unknown, with those that exist.
[[noreturn]] void refuse_name(const std::string &name, const std::vector<std::string> &known, const std::string &kind);

/// The one of that name among things of a kind, "link" or "site"; throws Refusal.
template <class Named>
const Named &named(const std::vector<Named> &all, const std::string &name, const std::string &kind) {
    std::vector<std::string> names;
    for (const Named &one : all) {
        if (one.name == name) return one;
        names.push_back(one.name);
    }
    refuse_name(name, names, kind);
}

} // namespace desk
