// A file as a tree in which every value knows where it stands, so that a refusal can say file, line and key.
#pragma once

#include "text.hpp"

#include <deque>

namespace desk {

/// What a file may hold at most. Far beyond any real production, and small enough to be read at once.
struct Limits {
    static constexpr std::size_t bytes = 4u * 1024u * 1024u;
    static constexpr std::size_t depth = 32;
    static constexpr std::size_t values = 100000;
};

struct Value {
    enum class Kind { null, boolean, number, text, list, object };
    Kind kind = Kind::null;
    double number = 0.0;
    std::string text;
    std::vector<const Value *> items; ///< of a list, or the members of an object, as written
    const Value *parent = nullptr;
    std::string key;            ///< in an object
    std::size_t index = 0;      ///< in a list
    std::size_t offset = 0;     ///< of its first byte in the file
    std::size_t key_offset = 0; ///< of its key; its own offset where it has none

    /// The member of this name, or null.
    const Value *find(std::string_view name) const;
    /// How a person finds it: links[0].stages[2].length_m
    std::string path() const;
};

/// A whole file. Values stay where they are as long as it lives. A reader of its format plants the tree; the first
/// value is the root.
class Document {
  public:
    /// Takes a file's text, without a tree; throws Refusal where it cannot be read or is larger than that many bytes.
    static Document load(const std::string &file, std::size_t largest);

    Document(const Document &) = delete;
    Document(Document &&) = default;

    const std::string &file() const { return file_; } ///< as it was given
    const std::string &text() const { return text_; }
    const Value &root() const { return values_.front(); }
    std::size_t size() const { return values_.size(); }

    /// A new value that stands at an offset of the text: a member or item of its parent, or the root where that is
    /// null.
    Value &add(Value::Kind kind, Value *parent, std::size_t offset);

    /// Throws a Refusal that names the file, line, column and path of a value, or of its key.
    [[noreturn]] void refuse(const Value &value, const std::string &why) const;
    [[noreturn]] void refuse_key(const Value &value, const std::string &why) const;
    /// The same of any place; the path may be empty.
    [[noreturn]] void refuse_at(std::size_t offset, const std::string &path, const std::string &why) const;
    std::size_t line_of(std::size_t offset) const;

  private:
    Document() = default;

    std::string file_;
    std::string text_;
    std::deque<Value> values_;
};

} // namespace desk
