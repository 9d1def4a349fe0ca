#include "read_touchstone.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>

namespace desk {
namespace {

constexpr std::size_t most_ports = 99;
constexpr std::size_t noise_numbers = 5; // of one frequency

struct Word {
    std::string_view text;
    std::size_t offset;
};

struct Number {
    double value;
    std::size_t offset;
};

// A line without its comment.
struct Line {
    std::string_view text;
    std::size_t offset = 0; // of its first character that is not blank
};

std::vector<Word> words_of(const Line &line) {
    std::vector<Word> words;
    constexpr std::string_view blanks = " \t";
    for (std::size_t at = line.text.find_first_not_of(blanks); at != std::string_view::npos;) {
        const std::size_t end = std::min(line.text.find_first_of(blanks, at), line.text.size());
        words.push_back({line.text.substr(at, end - at), line.offset + at});
        at = line.text.find_first_not_of(blanks, end);
    }
    return words;
}

// Cuts the text into lines that hold something.
class LineCutter {
  public:
    explicit LineCutter(const std::string &text) : text_(text), at_(begin_of(text)) {}

    bool next(Line &line) {
        while (at_ < text_.size()) {
            const std::size_t end = std::min(text_.find_first_of("\r\n", at_), text_.size());
            std::string_view body = std::string_view(text_).substr(at_, end - at_);
            body = body.substr(0, body.find('!'));
            const std::size_t first = body.find_first_not_of(" \t");
            line = {first == std::string_view::npos ? std::string_view() : body.substr(first), at_ + first};
            at_ = std::min(end + 1, text_.size());
            if (!line.text.empty()) return true;
        }
        return false;
    }

  private:
    const std::string &text_;
    std::size_t at_;
};

std::optional<std::size_t> count_in(std::string_view text) {
    std::size_t count = 0;
    const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc() || rest != text.data() + text.size()) return std::nullopt;
    return count;
}

std::string counted(std::size_t count, const std::string &what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

class Reader {
  public:
    Reader(Document &document, const Parameter &parameter) : document_(document), parameter_(parameter) {}

    std::string read() {
        LineCutter lines(document_.text());
        ports_ = ports_in_name(document_.file());
        for (Line line; lines.next(line); first_ = false) take(line);
        finish();
        return resistance_words();
    }

  private:
    enum class Section { header, reference, network, noise, information, after_end };
    enum class Format { magnitude, decibels, real };
    enum class Matrix { full, lower, upper };

    [[noreturn]] void refuse(std::size_t offset, const std::string &why) const { document_.refuse_at(offset, "", why); }

    void take(const Line &line) {
        if (section_ == Section::information) return take_information(line);
        if (section_ == Section::after_end) refuse(line.offset, "only comments follow [End]");
        if (line.text.front() == '[') return take_keyword(line);
        if (line.text.front() == '#') return take_option_line(line);
        if (!has_options_)
            refuse(line.offset, "the option line must come first, as in # GHz S MA R 50 (these are its defaults)");
        const std::vector<Number> numbers = numbers_of(words_of(line));
        if (section_ == Section::reference) return take_references(numbers);
        if (section_ == Section::header) {
            if (version_ != 1) refuse(line.offset, "[Network Data] must stand before the data");
            begin_network(line.offset);
        }
        take_data(numbers);
    }

    std::vector<Number> numbers_of(const std::vector<Word> &words) const {
        std::vector<Number> numbers;
        for (const Word &word : words) {
            const std::optional<double> number = number_in(word.text);
            if (!number) refuse(word.offset, in_quotes(word.text) + " is no number");
            numbers.push_back({*number, word.offset});
        }
        return numbers;
    }

    // ---- The option line ----

    void take_option_line(const Line &line) {
        if (has_options_) return; // the standard ignores all but the first
        has_options_ = true;
        bool unit = false, kind = false, format = false, resistance = false;
        const auto once = [&](bool &given, const Word &word) {
            if (given) refuse(word.offset, in_quotes(word.text) + " says again what this line has said");
            given = true;
        };
        const std::vector<Word> words = words_of({line.text.substr(1), line.offset + 1});
        for (std::size_t i = 0; i < words.size(); ++i) {
            const std::string word = lower_case(words[i].text);
            if (word == "hz" || word == "khz" || word == "mhz" || word == "ghz") {
                once(unit, words[i]);
                unit_ = word;
            } else if (word == "ma" || word == "db" || word == "ri") {
                once(format, words[i]);
                format_ = word == "ma" ? Format::magnitude : word == "db" ? Format::decibels : Format::real;
            } else if (word == "s" || word == "y" || word == "z" || word == "g" || word == "h") {
                once(kind, words[i]);
                if (word != "s")
                    refuse(words[i].offset, "this file holds " + std::string(words[i].text) +
                                                "-parameters; only S-parameters are a gain, so convert it first");
            } else if (word == "r") {
                once(resistance, words[i]);
                i = take_resistances(words, i);
            } else {
                refuse(words[i].offset, in_quotes(words[i].text) +
                                            " is no word of an option line; it holds a unit (Hz, kHz, MHz, GHz), S, a "
                                            "format (DB, MA, RI), and R with ohms");
            }
        }
    }

    // The ohms behind R: one number, or in version 1.1 one for each port. The answer is the place of the last.
    std::size_t take_resistances(const std::vector<Word> &words, std::size_t r) {
        resistances_.clear();
        std::size_t i = r;
        while (i + 1 < words.size() && number_in(words[i + 1].text)) ++i;
        if (i == r) refuse(words[r].offset, "R needs a number of ohms behind it");
        for (const Number &number : numbers_of({words.begin() + static_cast<std::ptrdiff_t>(r) + 1,
                                                words.begin() + static_cast<std::ptrdiff_t>(i) + 1}))
            add_resistance(number);
        const bool one_for_each = version_ == 1 && resistances_.size() == ports_ && i + 1 == words.size();
        if (resistances_.size() > 1 && !one_for_each)
            refuse(words[r + 2].offset, version_ == 1
                                            ? "R takes one number of ohms, or at the end of the line one for each port"
                                            : "R takes one number of ohms; [Reference] takes one for each port");
        return i;
    }

    void add_resistance(const Number &number) {
        if (number.value <= 0.0) refuse(number.offset, "a reference must be more than 0 ohm");
        resistances_.push_back(number.value);
    }

    // ---- Keywords of version 2 ----

    struct Keyword {
        std::size_t offset;
        std::vector<Word> words;
    };

    // "two-port data order" of "[Two-Port  Data Order] 21_12"
    std::string name_of_keyword(const Line &line, Keyword &keyword) const {
        const std::size_t close = line.text.find(']');
        if (close == std::string_view::npos) refuse(line.offset, "this keyword has no ]");
        std::string name;
        for (const Word &word : words_of({line.text.substr(1, close - 1), 0}))
            name += (name.empty() ? "" : " ") + lower_case(word.text);
        keyword = {line.offset, words_of({line.text.substr(close + 1), line.offset + close + 1})};
        return name;
    }

    void take_information(const Line &line) {
        if (line.text.front() != '[' || line.text.find(']') == std::string_view::npos) return;
        Keyword keyword;
        if (name_of_keyword(line, keyword) == "end information") section_ = Section::header;
    }

    void take_keyword(const Line &line) {
        Keyword keyword;
        const std::string name = name_of_keyword(line, keyword);
        if (name == "version") return take_version(keyword);
        if (version_ == 1) refuse(line.offset, "only a file that begins with [Version] 2.0 has keywords");
        if (!has_options_) refuse(line.offset, "the option line must stand between [Version] and the other keywords");
        if (section_ == Section::reference) end_references();
        const bool in_header = section_ == Section::header;
        if (name == "end") return take_end(keyword);
        if (name == "noise data") return take_noise_data(keyword);
        if (!in_header) refuse(line.offset, "this keyword must stand before [Network Data]");
        if (name == "end information") refuse(line.offset, "[Begin Information] must stand before this keyword");
        if (name == "begin information") return take_begin_information(keyword);
        if (const auto [place, fresh] = seen_.insert({name, line.offset}); !fresh)
            refuse(line.offset, "the same keyword stands on line " + std::to_string(document_.line_of(place->second)));
        if (name == "number of ports") return take_ports(keyword);
        if (!seen_.contains("number of ports")) refuse(line.offset, "[Number of Ports] must stand before this keyword");
        if (name == "two-port data order") return take_order(keyword);
        if (name == "number of frequencies") frequencies_ = whole_number(keyword, LVB_MAX_ROWS);
        else if (name == "number of noise frequencies") noise_frequencies_ = whole_number(keyword, LVB_MAX_ROWS);
        else if (name == "matrix format") take_matrix(keyword);
        else if (name == "reference") take_reference(keyword);
        else if (name == "network data") take_network_data(keyword);
        else if (name == "mixed-mode order")
            refuse(line.offset,
                   "mixed-mode parameters are not gains between ports; convert the file to single-ended first");
        else refuse(line.offset, in_quotes("[" + name + "]") + " is no keyword of Touchstone 2.0");
    }

    const Word &only_word(const Keyword &keyword, const std::string &needed) const {
        if (keyword.words.empty()) refuse(keyword.offset, needed + " must follow this keyword");
        if (keyword.words.size() > 1) refuse(keyword.words[1].offset, "nothing more follows here");
        return keyword.words.front();
    }

    void no_words(const Keyword &keyword) const {
        if (!keyword.words.empty()) refuse(keyword.words.front().offset, "nothing follows this keyword on its line");
    }

    std::size_t whole_number(const Keyword &keyword, std::size_t most) const {
        const Word &word = only_word(keyword, "a whole number");
        const std::optional<std::size_t> count = count_in(word.text);
        if (!count || *count == 0 || *count > most)
            refuse(word.offset, in_quotes(word.text) + " is no whole number from 1 to " + std::to_string(most));
        return *count;
    }

    void take_version(const Keyword &keyword) {
        if (!first_) refuse(keyword.offset, "[Version] must be the first line that is no comment");
        const Word &word = only_word(keyword, "2.0");
        if (word.text != "2.0" && word.text != "2.1")
            refuse(word.offset,
                   in_quotes(word.text) +
                       " is no version that is read here; they are 2.0 and 2.1, and 1 without this keyword");
        version_ = 2;
        needs_end_ = word.text == "2.1";
    }

    void take_ports(const Keyword &keyword) {
        const std::size_t named = ports_;
        ports_ = whole_number(keyword, most_ports);
        if (named != 0 && named != ports_) refuse(keyword.offset, "the file's name tells of " + counted(named, "port"));
    }

    void take_order(const Keyword &keyword) {
        const Word &word = only_word(keyword, "21_12 or 12_21");
        if (ports_ != 2) refuse(keyword.offset, "only a file of 2 ports has this keyword");
        if (word.text != "21_12" && word.text != "12_21")
            refuse(word.offset, in_quotes(word.text) + " is no order; there are '21_12' and '12_21'");
        order_21_first_ = word.text == "21_12";
    }

    void take_matrix(const Keyword &keyword) {
        const Word &word = only_word(keyword, "Full, Lower or Upper");
        const std::string name = lower_case(word.text);
        if (name != "full" && name != "lower" && name != "upper")
            refuse(word.offset, in_quotes(word.text) + " is no matrix format; there are 'Full', 'Lower' and 'Upper'");
        matrix_ = name == "full" ? Matrix::full : name == "lower" ? Matrix::lower : Matrix::upper;
    }

    void take_reference(const Keyword &keyword) {
        resistances_.clear();
        section_ = Section::reference;
        take_references(numbers_of(keyword.words));
    }

    void take_references(const std::vector<Number> &numbers) {
        for (const Number &number : numbers) {
            if (resistances_.size() == ports_) refuse(number.offset, "more references than ports");
            add_resistance(number);
        }
        if (resistances_.size() == ports_) section_ = Section::header;
    }

    void end_references() const {
        refuse(seen_.at("reference"), counted(resistances_.size(), "reference") + " for " + counted(ports_, "port"));
    }

    void take_begin_information(const Keyword &keyword) {
        no_words(keyword);
        information_ = keyword.offset;
        section_ = Section::information;
    }

    void take_network_data(const Keyword &keyword) {
        no_words(keyword);
        if (frequencies_ == 0) refuse(keyword.offset, "[Number of Frequencies] must stand before this keyword");
        if (ports_ == 2 && !seen_.contains("two-port data order"))
            refuse(keyword.offset, "[Two-Port Data Order] must stand before this keyword");
        begin_network(keyword.offset);
    }

    void take_noise_data(const Keyword &keyword) {
        no_words(keyword);
        if (section_ != Section::network) refuse(keyword.offset, "[Noise Data] follows the network data, once");
        if (ports_ != 2) refuse(keyword.offset, "only a file of 2 ports has noise data");
        if (noise_frequencies_ == 0)
            refuse(keyword.offset, "[Number of Noise Frequencies] must stand before [Network Data]");
        end_section();
        section_ = Section::noise;
    }

    void take_end(const Keyword &keyword) {
        no_words(keyword);
        if (section_ == Section::header) refuse(keyword.offset, "the file ends without [Network Data]");
        end_section();
        section_ = Section::after_end;
    }

    // ---- Data ----

    void begin_network(std::size_t offset) {
        section_ = Section::network;
        if (ports_ == 0) refuse(offset, "the number of ports is not told; name the file by it: .s2p for 2 ports");
        if (parameter_.to > ports_ || parameter_.from > ports_)
            refuse(offset, "this file has " + counted(ports_, "port") + " and so no " + desk::name_of(parameter_));
        Value &root = document_.add(Value::Kind::object, nullptr, offset);
        frequency_column_ = &document_.add(Value::Kind::list, &root, offset);
        frequency_column_->key = "frequency_" + unit_;
        gain_column_ = &document_.add(Value::Kind::list, &root, offset);
        gain_column_->key = "gain_db";
    }

    std::size_t network_numbers() const {
        return 1 + 2 * (matrix_ == Matrix::full ? ports_ * ports_ : ports_ * (ports_ + 1) / 2);
    }

    // Pairs are never cut by the end of a line: a line of an odd number of numbers begins with a frequency.
    void take_data(const std::vector<Number> &numbers) {
        const bool begins = numbers.size() % 2 == 1;
        if (begins) end_record();
        const std::size_t whole = section_ == Section::noise ? noise_numbers : network_numbers();
        if (!begins && record_.empty())
            refuse(numbers.front().offset, "here " + counted(numbers.size(), "number") +
                                               " stand; a line that begins with a frequency has an odd number of them");
        if (record_.size() + numbers.size() > whole)
            refuse(numbers[whole - record_.size()].offset,
                   "from here on there are more than the " + std::to_string(whole) + " numbers of one frequency");
        record_.insert(record_.end(), numbers.begin(), numbers.end());
        if (record_.size() == whole) end_record();
    }

    void end_record() {
        if (record_.empty()) return;
        const bool first_of_noise = version_ == 1 && ports_ == 2 && section_ == Section::network &&
                                    record_.size() == noise_numbers && !frequency_column_->items.empty() &&
                                    record_.front().value <= frequency_column_->items.back()->number;
        if (first_of_noise) section_ = Section::noise;
        if (section_ == Section::noise) end_noise_record();
        else end_network_record();
        record_.clear();
    }

    void check_whole(std::size_t whole) const {
        if (record_.size() != whole)
            refuse(record_.front().offset, "this frequency has " + std::to_string(record_.size()) + " of its " +
                                               std::to_string(whole) + " numbers");
    }

    void end_noise_record() {
        check_whole(noise_numbers);
        const Number &frequency = record_.front();
        if (noise_rows_ > 0 && frequency.value <= last_noise_)
            refuse(frequency.offset, "the frequencies of the noise data must rise");
        last_noise_ = frequency.value;
        if (++noise_rows_ > LVB_MAX_ROWS)
            refuse(frequency.offset, "more than " + std::to_string(LVB_MAX_ROWS) + " rows");
    }

    void end_network_record() {
        check_whole(network_numbers());
        if (frequency_column_->items.size() == LVB_MAX_ROWS)
            refuse(record_.front().offset, "more than " + std::to_string(LVB_MAX_ROWS) + " rows");
        const std::size_t at = 1 + 2 * pair_of_parameter();
        document_.add(Value::Kind::number, frequency_column_, record_.front().offset).number = record_.front().value;
        document_.add(Value::Kind::number, gain_column_, record_[at].offset).number =
            gain_db(record_[at], record_[at + 1].value);
    }

    // Where the parameter stands among the pairs of one frequency.
    std::size_t pair_of_parameter() const {
        std::size_t row = parameter_.to - 1;
        std::size_t column = parameter_.from - 1;
        if (matrix_ != Matrix::full) { // half of a symmetric matrix
            if ((matrix_ == Matrix::lower) == (row < column)) std::swap(row, column);
            return matrix_ == Matrix::lower ? row * (row + 1) / 2 + column
                                            : row * ports_ - row * (row + 1) / 2 + column;
        }
        if (ports_ == 2 && order_21_first_) std::swap(row, column);
        return row * ports_ + column;
    }

    double gain_db(const Number &first, double second) const {
        if (format_ == Format::decibels) return first.value;
        if (format_ == Format::magnitude && first.value < 0.0) refuse(first.offset, "a magnitude is not below 0");
        const double magnitude = format_ == Format::magnitude ? first.value : std::hypot(first.value, second);
        if (magnitude == 0.0 || !std::isfinite(magnitude))
            refuse(first.offset,
                   desk::name_of(parameter_) + " is " + plain(magnitude) + " here, which is no number of decibels");
        return lvb_db_from_amplitude_ratio(magnitude);
    }

    // Counts are compared with what version 2 has announced.
    void end_section() {
        end_record();
        if (version_ == 1) return;
        const bool noise = section_ == Section::noise;
        const std::size_t announced = noise ? noise_frequencies_ : frequencies_;
        const std::size_t rows = noise ? noise_rows_ : frequency_column_->items.size();
        if (rows != announced)
            refuse(seen_.at(noise ? "number of noise frequencies" : "number of frequencies"),
                   "this announces " + std::to_string(announced) + ", but the data hold " + std::to_string(rows));
    }

    void finish() {
        const std::size_t end = document_.text().size();
        if (section_ == Section::information) refuse(information_, "[End Information] is missing");
        if (section_ == Section::reference) end_references();
        if (section_ == Section::network || section_ == Section::noise) {
            if (needs_end_) refuse(end, "[End] is missing; version 2.1 has it");
            end_section();
        }
        if (frequency_column_ == nullptr || frequency_column_->items.empty())
            refuse(end,
                   has_options_ ? "the file ends before its first frequency" : "the file ends before its option line");
        if (seen_.contains("number of noise frequencies") && noise_rows_ == 0)
            refuse(seen_.at("number of noise frequencies"), "noise data are announced, but none follow");
    }

    std::string resistance_words() const {
        const auto of = [&](std::size_t port) {
            return resistances_.size() == 1 ? resistances_.front() : resistances_[port - 1];
        };
        const double to = of(parameter_.to);
        const double from = of(parameter_.from);
        return (to == from ? plain(to) : plain(from) + " to " + plain(to)) + " ohm";
    }

    Document &document_;
    const Parameter parameter_;
    int version_ = 1;
    bool needs_end_ = false;
    bool first_ = true; // nothing but comments so far
    bool has_options_ = false;
    Section section_ = Section::header;
    std::string unit_ = "ghz";
    Format format_ = Format::magnitude;
    Matrix matrix_ = Matrix::full;
    bool order_21_first_ = true;
    std::size_t ports_ = 0;
    std::vector<double> resistances_ = {50.0}; // one for all ports, or one for each
    std::map<std::string, std::size_t> seen_;  // keywords of the header, with their offsets
    std::size_t information_ = 0;              // offset of [Begin Information]
    std::size_t frequencies_ = 0;
    std::size_t noise_frequencies_ = 0;
    std::vector<Number> record_; // numbers of the frequency that is being read
    std::size_t noise_rows_ = 0;
    double last_noise_ = 0.0;
    Value *frequency_column_ = nullptr;
    Value *gain_column_ = nullptr;
};

} // namespace

std::optional<Parameter> parameter_in(std::string_view text) {
    if (text.empty() || (text.front() != 's' && text.front() != 'S')) return std::nullopt;
    text.remove_prefix(1);
    std::size_t cut = text.find('_');
    const std::size_t skip = cut == std::string_view::npos ? 0 : 1;
    if (skip == 0 && text.size() != 2) return std::nullopt;
    if (skip == 0) cut = 1;
    const std::optional<std::size_t> to = count_in(text.substr(0, cut));
    const std::optional<std::size_t> from = count_in(text.substr(cut + skip));
    if (!to || !from || *to == 0 || *from == 0 || *to > most_ports || *from > most_ports) return std::nullopt;
    return Parameter{*to, *from};
}

std::string name_of(const Parameter &parameter) {
    const bool long_name = parameter.to > 9 || parameter.from > 9;
    return "s" + std::to_string(parameter.to) + (long_name ? "_" : "") + std::to_string(parameter.from);
}

std::size_t ports_in_name(std::string_view file) {
    const std::string name = lower_case(file.substr(file.find_last_of("./") + 1));
    if (name.size() < 3 || name.size() == file.size() || name.front() != 's' || name.back() != 'p') return 0;
    const std::optional<std::size_t> ports = count_in(std::string_view(name).substr(1, name.size() - 2));
    return ports && *ports <= most_ports ? *ports : 0;
}

std::string plant_touchstone(Document &document, const Parameter &parameter) {
    return Reader(document, parameter).read();
}

} // namespace desk
