// Questions that every reader asks of a value in the file; each throws Refusal at the value's line and key.
#pragma once

#include "document.hpp"
#include "keys.hpp"

namespace desk {

class Checks {
  public:
    explicit Checks(const Document &document) : document_(document) {}
    const Document &document() const { return document_; }

    void expect(const Value &value, Value::Kind kind) const;
    /// The member of that name, which must be there.
    const Value &need(const Value &object, const char *key) const;
    /// A text that is not empty and not longer than anybody writes.
    std::string text(const Value &value) const;
    std::string text_or_empty(const Value &object, const char *key) const;
    double number(const Value &value) const;
    /// Refuses every key that is not known, and says what was probably meant.
    void check_keys(const Value &object, const std::vector<std::string> &known, const std::string &where) const;
    /// A word out of a list; the answer is its place in the list. `meanings` tells what there is to whoever wrote none.
    std::int32_t choose(const Value &value, const std::vector<std::string> &known, const char *what,
                        const std::string &meanings = "") const;

  private:
    const Document &document_;
};

/// The names, and those of all keys that serve a kind of stage (0: all keys).
std::vector<std::string> with_names(std::vector<std::string> names, const std::vector<NumberKey> &keys,
                                    std::int32_t kind);

/// The library's words for its values, from `first` up to the first value that it does not know.
std::vector<std::string> words(const char *(*name)(std::int32_t), std::int32_t first);

} // namespace desk
