#include "document.hpp"

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

namespace desk {
namespace {

bool is_identifier(const std::string &key) {
    return !key.empty() && std::all_of(key.begin(), key.end(),
                                       [](unsigned char c) { return c == '_' || (c < 0x80 && std::isalnum(c) != 0); });
}

} // namespace

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

Document Document::load(const std::string &file, std::size_t largest) {
    const std::string name = ascii(file);
    std::error_code ignored;
    if (std::filesystem::is_directory(file, ignored)) throw Unreadable(name + ": this is a directory, not a file");
    std::ifstream stream(file, std::ios::binary);
    if (!stream) throw Unreadable(name + ": cannot be opened: " + std::strerror(errno));

    Document document;
    document.file_ = file;
    char piece[16384];
    do {
        stream.read(piece, sizeof piece);
        document.text_.append(piece, static_cast<std::size_t>(stream.gcount()));
    } while (stream && document.text_.size() <= largest);
    if (stream.bad()) throw Unreadable(name + ": cannot be read");
    if (document.text_.size() > largest) throw Unreadable(name + ": larger than " + std::to_string(largest) + " bytes");
    return document;
}

Value &Document::add(Value::Kind kind, Value *parent, std::size_t offset) {
    Value &value = values_.emplace_back();
    value.kind = kind;
    value.offset = offset;
    value.key_offset = offset;
    if (parent == nullptr) return value;
    value.parent = parent;
    value.index = parent->items.size();
    parent->items.push_back(&value);
    return value;
}

std::size_t Document::line_of(std::size_t offset) const {
    std::size_t line = 1;
    for (std::size_t i = 0; i < std::min(offset, text_.size()); ++i)
        if (text_[i] == '\n' || (text_[i] == '\r' && (i + 1 == text_.size() || text_[i + 1] != '\n'))) ++line;
    return line;
}

void Document::refuse_at(std::size_t offset, const std::string &path, const std::string &why) const {
    const std::size_t at = std::min(offset, text_.size());
    const std::size_t newline = at == 0 ? std::string::npos : text_.find_last_of("\r\n", at - 1);
    const std::size_t start = newline == std::string::npos ? 0 : newline + 1;
    const std::size_t column = ascii(std::string_view(text_).substr(start, at - start)).size() + 1;
    throw Refusal(ascii(file_) + ":" + std::to_string(line_of(at)) + ":" + std::to_string(column) + ": " +
                  (path.empty() ? "" : path + ": ") + ascii(why));
}

void Document::refuse(const Value &value, const std::string &why) const { refuse_at(value.offset, value.path(), why); }

void Document::refuse_key(const Value &value, const std::string &why) const {
    refuse_at(value.key_offset, value.path(), why);
}

} // namespace desk
