#include "read_csv.hpp"

#include "checks.hpp"

#include <algorithm>

namespace desk {
namespace {

struct Field {
    std::string text;
    std::size_t offset = 0;
};
using Record = std::vector<Field>;

const char *const column_for_people = "note";

// Cuts the text into records. A record is a line, or several where a line end stands between quotes.
class Cutter {
  public:
    explicit Cutter(const Document &document)
        : document_(document), text_(document.text()), at_(begin_of(document.text())) {}

    /// False at the end of the file.
    bool next(Record &record) {
        record.clear();
        skip_to_record();
        if (at_ == text_.size()) return false;
        record.push_back(field());
        while (at_ < text_.size() && text_[at_] == ',') {
            ++at_;
            record.push_back(field());
        }
        return true;
    }

  private:
    void skip_blanks() { at_ = std::min(text_.find_first_not_of(" \t", at_), text_.size()); }

    void skip_to_record() {
        for (;;) {
            at_ = std::min(text_.find_first_not_of(" \t\r\n", at_), text_.size());
            if (at_ == text_.size() || text_[at_] != '#') return;
            at_ = std::min(text_.find_first_of("\r\n", at_), text_.size());
        }
    }

    Field field() {
        skip_blanks();
        return at_ < text_.size() && text_[at_] == '"' ? quoted_field() : plain_field();
    }

    Field plain_field() {
        Field field{"", at_};
        const std::size_t end = std::min(text_.find_first_of(",\r\n", at_), text_.size());
        field.text = text_.substr(at_, end - at_);
        field.text.erase(field.text.find_last_not_of(" \t") + 1);
        if (const std::size_t quote = field.text.find('"'); quote != std::string::npos)
            document_.refuse_at(at_ + quote, "",
                                "a quote within a field: put the whole field in quotes, and write this one twice");
        at_ = end;
        return field;
    }

    Field quoted_field() {
        Field field{"", at_};
        for (std::size_t from = at_ + 1;;) {
            const std::size_t quote = text_.find('"', from);
            if (quote == std::string::npos) document_.refuse_at(field.offset, "", "this quote is not closed");
            field.text += text_.substr(from, quote - from);
            at_ = quote + 1;
            if (at_ == text_.size() || text_[at_] != '"') break;
            field.text += '"';
            from = at_ + 1;
        }
        skip_blanks();
        if (at_ < text_.size() && std::string_view(",\r\n").find(text_[at_]) == std::string_view::npos)
            document_.refuse_at(at_, "", "a comma or the end of the line must follow the closing quote");
        return field;
    }

    const Document &document_;
    const std::string &text_;
    std::size_t at_;
};

// The names of the columns, each an empty list below the root.
std::vector<Value *> plant_header(Document &document, const Record &header, const std::vector<std::string> &known) {
    Value &root = document.add(Value::Kind::object, nullptr, header.front().offset);
    if (header.size() == 1)
        for (const char separator : {';', '\t'})
            if (header.front().text.find(separator) != std::string::npos)
                document.refuse(root, "commas separate the columns here, and a point the decimals; this file has other "
                                      "separators");
    std::vector<Value *> columns;
    for (const Field &field : header) {
        if (field.text.empty()) document.refuse_at(field.offset, "", "this column has no name");
        if (root.find(field.text) != nullptr)
            document.refuse_at(field.offset, "", "the column " + in_quotes(field.text) + " stands here twice");
        columns.push_back(&document.add(Value::Kind::list, &root, field.offset));
        columns.back()->key = field.text;
        // Before the next name: an unknown one ends it, however many there are.
        std::vector<std::string> names = known;
        names.emplace_back(column_for_people);
        Checks(document).check_keys(root, names, "this table");
    }
    return columns;
}

void plant_number(Document &document, Value &column, const Field &field) {
    if (column.key == column_for_people) return;
    const std::optional<double> number = number_in(field.text);
    Value &value = document.add(Value::Kind::number, &column, field.offset);
    if (field.text.empty()) document.refuse(value, "this field is empty");
    if (!number)
        document.refuse(value, in_quotes(field.text) + " is no number" +
                                   (field.text.find(',') == std::string::npos ? "" : "; decimals take a point"));
    value.number = *number;
}

} // namespace

void plant_csv(Document &document, const std::vector<std::string> &known) {
    Cutter cutter(document);
    Record record;
    if (!cutter.next(record)) document.refuse_at(document.text().size(), "", "this file has no header");
    const std::vector<Value *> columns = plant_header(document, record, known);
    std::size_t rows = 0;
    for (; cutter.next(record); ++rows) {
        if (rows == LVB_MAX_ROWS)
            document.refuse_at(record.front().offset, "", "more than " + std::to_string(rows) + " rows");
        if (record.size() != columns.size())
            document.refuse_at(record.front().offset, "",
                               "fields in this row: " + std::to_string(record.size()) +
                                   ", in the header: " + std::to_string(columns.size()) +
                                   (record.size() > columns.size() ? "; decimals take a point" : ""));
        for (std::size_t i = 0; i < columns.size(); ++i) plant_number(document, *columns[i], record[i]);
    }
    if (rows == 0) document.refuse_at(document.text().size(), "", "no row follows the header");
}

} // namespace desk
