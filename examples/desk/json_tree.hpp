// A JSON file as a tree in which every value knows where it stands, so that a refusal can say file, line and key.
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

/// A whole file. Values stay where they are as long as it lives.
class Document {
  public:
    /// Reads a file; throws Refusal for anything that is not one JSON value within the limits.
    static Document read(const std::string &file);

    Document(const Document &) = delete;
    Document(Document &&) = default;

    const Value &root() const { return values_.front(); }
    const std::string &file() const { return file_; }

    /// Throws a Refusal that names the file, line, column and path of a value, or of its key.
    [[noreturn]] void refuse(const Value &value, const std::string &why) const;
    [[noreturn]] void refuse_key(const Value &value, const std::string &why) const;
    std::size_t line_of(std::size_t offset) const;

  private:
    friend class TreeBuilder;
    Document() = default;
    [[noreturn]] void refuse_at(std::size_t offset, const std::string &path, const std::string &why) const;

    std::string file_;
    std::string text_;
    std::deque<Value> values_;
};

} // namespace desk
