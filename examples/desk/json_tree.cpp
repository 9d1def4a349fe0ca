#include "json_tree.hpp"

#include "json_slips.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
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

bool is_identifier(const std::string &key) {
    return !key.empty() && std::all_of(key.begin(), key.end(),
                                       [](unsigned char c) { return c == '_' || (c < 0x80 && std::isalnum(c) != 0); });
}

} // namespace

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
        if (const auto slip = find_slip(document_.text_, at))
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
        const std::string &text = document_.text_;
        if (cursor_ == 0 && text.starts_with("\xEF\xBB\xBF")) return text.find_first_not_of(" \t\r\n", 3);
        return std::min(text.find_first_not_of(" \t\r\n,:", cursor_), text.size());
    }

    bool add(Value::Kind kind, double number = 0.0, std::string text = {}) {
        const std::size_t start = token_start();
        if (document_.values_.size() == Limits::values)
            document_.refuse_at(start, "", "more than " + std::to_string(Limits::values) + " values");
        Value &value = document_.values_.emplace_back();
        value.kind = kind;
        value.number = number;
        value.text = std::move(text);
        value.offset = start;
        value.key_offset = start;
        cursor_ = taken_;
        if (open_.empty()) return true;
        Value &parent = *open_.back().value;
        value.parent = &parent;
        value.index = parent.items.size();
        if (parent.kind == Value::Kind::object) {
            value.key = key_;
            value.key_offset = key_offset_;
        }
        parent.items.push_back(&value);
        return true;
    }
    bool open(Value::Kind kind) {
        if (open_.size() == Limits::depth)
            document_.refuse_at(token_start(), "", "nested deeper than " + std::to_string(Limits::depth) + " levels");
        add(kind);
        open_.push_back({&document_.values_.back(), {}});
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
    std::vector<Open> open_;
};

const Value *Value::find(std::string_view name) const {
    for (const Value *item : items)
        if (item->key == name) return item;
    return nullptr;
}

std::string Value::path() const {
    if (parent == nullptr) return "";
    std::string before = parent->path();
    if (parent->kind == Kind::list) return before + "[" + std::to_string(index) + "]";
    if (!before.empty()) before += '.';
    return before + (is_identifier(key) && key.size() <= 40 ? key : in_quotes(key));
}

Document Document::read(const std::string &file) {
    const std::string name = ascii(file);
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored)) throw Refusal(name + ": this is a directory, not a file");
    std::ifstream stream(file, std::ios::binary);
    if (!stream) throw Refusal(name + ": cannot be opened: " + std::strerror(errno));

    Document document;
    document.file_ = name;
    document.text_.resize(Limits::bytes + 1);
    stream.read(document.text_.data(), static_cast<std::streamsize>(document.text_.size()));
    if (stream.bad()) throw Refusal(name + ": cannot be read");
    document.text_.resize(static_cast<std::size_t>(stream.gcount()));
    if (document.text_.size() > Limits::bytes)
        throw Refusal(name + ": larger than " + std::to_string(Limits::bytes) + " bytes");

    std::size_t taken = 0;
    const char *begin = document.text_.data();
    const char *end = begin + document.text_.size();
    TreeBuilder builder(document, taken);
    nlohmann::json::sax_parse(CountingIterator(begin, &taken), CountingIterator(end, &taken), &builder);
    return document;
}

std::size_t Document::line_of(std::size_t offset) const {
    const auto end = text_.begin() + static_cast<std::ptrdiff_t>(std::min(offset, text_.size()));
    return static_cast<std::size_t>(std::count(text_.begin(), end, '\n')) + 1;
}

void Document::refuse_at(std::size_t offset, const std::string &path, const std::string &why) const {
    const std::size_t at = std::min(offset, text_.size());
    const std::size_t newline = at == 0 ? std::string::npos : text_.rfind('\n', at - 1);
    const std::size_t start = newline == std::string::npos ? 0 : newline + 1;
    const std::size_t column = ascii(std::string_view(text_).substr(start, at - start)).size() + 1;
    throw Refusal(file_ + ":" + std::to_string(line_of(at)) + ":" + std::to_string(column) + ": " +
                  (path.empty() ? "" : path + ": ") + ascii(why));
}

void Document::refuse(const Value &value, const std::string &why) const { refuse_at(value.offset, value.path(), why); }

void Document::refuse_key(const Value &value, const std::string &why) const {
    refuse_at(value.key_offset, value.path(), why);
}

} // namespace desk
