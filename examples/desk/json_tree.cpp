#include "json_tree.hpp"

#include "json_slips.hpp"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <unordered_set>

namespace desk {
namespace {

// Walks over the text and counts, for everybody who holds a copy, how many bytes the parser has taken.
class CountingIterator {
  public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char *;
    using reference = const char &;

    CountingIterator(const char *at, std::size_t *taken) : at_(at), taken_(taken) {}
    reference operator*() const { return *at_; }
    CountingIterator &operator++() {
        ++at_;
        ++*taken_;
        return *this;
    }
    CountingIterator operator++(int) {
        CountingIterator before = *this;
        ++*this;
        return before;
    }
    bool operator==(const CountingIterator &other) const { return at_ == other.at_; }

  private:
    const char *at_;
    std::size_t *taken_;
};

// The parser's own reason without its position and without the text that it had read, which may be long.
std::string reason(const std::string &what) {
    const std::size_t colon = what.find(": ");
    std::string told = colon == std::string::npos ? what : what.substr(colon + 2);
    const std::size_t read = told.find("; last read");
    if (read == std::string::npos) return told;
    const std::size_t expected = told.rfind("; expected");
    const std::string rest = expected == std::string::npos || expected < read ? "" : told.substr(expected);
    return told.substr(0, read) + rest;
}

// Takes the parser's events and builds the tree.
class TreeBuilder : public nlohmann::json_sax<nlohmann::json> {
  public:
    TreeBuilder(Document &document, const std::size_t &taken) : document_(document), taken_(taken) {}

    bool null() override { return add(Value::Kind::null); }
    bool boolean(bool) override { return add(Value::Kind::boolean); }
    bool number_integer(number_integer_t v) override { return add(Value::Kind::number, static_cast<double>(v)); }
    bool number_unsigned(number_unsigned_t v) override { return add(Value::Kind::number, static_cast<double>(v)); }
    bool number_float(number_float_t v, const string_t &) override { return add(Value::Kind::number, v); }
    bool string(string_t &text) override { return add(Value::Kind::text, 0.0, text); }
    bool binary(binary_t &) override { return false; } // does not occur in JSON text
    bool start_object(std::size_t) override { return open(Value::Kind::object); }
    bool start_array(std::size_t) override { return open(Value::Kind::list); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t &name) override {
        key_offset_ = token_start();
        cursor_ = taken_;
        key_ = name;
        if (open_.back().keys.insert(name).second) return true;
        document_.refuse_at(key_offset_, open_.back().value->path(),
                            "the key " + in_quotes(name) + " stands here twice");
    }

    bool parse_error(std::size_t, const std::string &, const nlohmann::detail::exception &error) override {
        constexpr int number_overflow = 406;
        const std::size_t at = taken_ > 0 ? taken_ - 1 : 0;
        const std::string path = open_.empty() ? "" : open_.back().value->path();
        if (error.id == number_overflow) document_.refuse_at(at, path, "this number is too large");
        const std::string not_json = "this is not JSON: ";
        if (const auto slip = find_slip(document_.text(), at))
            document_.refuse_at(slip->offset, path, not_json + slip->words);
        document_.refuse_at(at, path, not_json + reason(error.what()));
    }

  private:
    struct Open {
        Value *value;
        std::unordered_set<std::string> keys;
    };

    // The token that was just taken begins after the one before it, past whatever may stand between two tokens.
    std::size_t token_start() const {
        const std::string &text = document_.text();
        if (cursor_ == 0 && begin_of(text) > 0) return text.find_first_not_of(" \t\r\n", begin_of(text));
        return std::min(text.find_first_not_of(" \t\r\n,:", cursor_), text.size());
    }

    bool add(Value::Kind kind, double number = 0.0, std::string text = {}) {
        const std::size_t start = token_start();
        if (document_.size() == Limits::values)
            document_.refuse_at(start, "", "more than " + std::to_string(Limits::values) + " values");
        Value *parent = open_.empty() ? nullptr : open_.back().value;
        Value &value = document_.add(kind, parent, start);
        value.number = number;
        value.text = std::move(text);
        added_ = &value;
        cursor_ = taken_;
        if (parent != nullptr && parent->kind == Value::Kind::object) {
            value.key = key_;
            value.key_offset = key_offset_;
        }
        return true;
    }
    bool open(Value::Kind kind) {
        if (open_.size() == Limits::depth)
            document_.refuse_at(token_start(), "", "nested deeper than " + std::to_string(Limits::depth) + " levels");
        add(kind);
        open_.push_back({added_, {}});
        return true;
    }
    bool close() {
        cursor_ = taken_;
        open_.pop_back();
        return true;
    }

    Document &document_;
    const std::size_t &taken_; // bytes that the parser has taken, which is up to one past a number
    std::size_t cursor_ = 0;   // end of the last token
    std::size_t key_offset_ = 0;
    std::string key_;
    Value *added_ = nullptr; // the last value
    std::vector<Open> open_;
};

} // namespace

Document read_json(const std::string &file) {
    Document document = Document::load(file, Limits::bytes);
    std::size_t taken = 0;
    const char *begin = document.text().data();
    const char *end = begin + document.text().size();
    TreeBuilder builder(document, taken);
    nlohmann::json::sax_parse(CountingIterator(begin, &taken), CountingIterator(end, &taken), &builder);
    return document;
}

} // namespace desk
