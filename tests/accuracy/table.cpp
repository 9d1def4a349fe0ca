#include "accuracy/table.hpp"

#include <cstdio>
#include <sstream>

namespace accuracy {
namespace {

std::string number(const char *format, double value) {
    char text[64];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

std::string two_digits_up(double value) {
    const double unit = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    return number("%.1e", std::ceil(value / unit) * unit);
}

std::string place(const Worst &worst) {
    std::string text = " at (";
    for (std::size_t i = 0; i < worst.at.size(); ++i) text += (i ? ", " : "") + number("%.17g", worst.at[i]);
    return text + ")";
}

std::string ulp_cell(const Worst &worst) { return worst.at.empty() ? "-" : rounded_up(worst.error) + place(worst); }
std::string plain_cell(const Worst &worst, const std::string &unit) {
    return worst.at.empty() ? "-" : two_digits_up(worst.error) + " " + unit + place(worst);
}

} // namespace

std::string rounded_up(double value) { return number("%.2f", std::ceil(value * 100.0) / 100.0); }

Row row_of(const support::Function &scalar, const Measured &measured) {
    const std::string unit = plain_unit(scalar);
    return {scalar.name,
            scalar.range_line,
            scalar.accuracy_line,
            std::to_string(measured.points),
            ulp_cell(measured.ulp),
            plain_cell(measured.near_zero, unit),
            plain_cell(measured.plain, unit)};
}

Row row_of(const Kernel &kernel, const Measured &measured) {
    return {std::string("kernel of ") + kernel.function,
            "every exponent",
            "below " + rounded_up(kernel.bound_ulp) + " ULP",
            std::to_string(measured.points),
            ulp_cell(measured.ulp),
            "-",
            "-"};
}

std::string text_of(const Row &row) {
    std::string text = "|";
    for (const std::string *cell :
         {&row.function, &row.range, &row.stated, &row.points, &row.ulp, &row.near_zero, &row.plain})
        text += " " + *cell + " |";
    return text + "\n";
}

std::vector<Row> rows_in(const std::string &text) {
    std::vector<Row> rows;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.find("lvb_") == std::string::npos || line[0] != '|') continue;
        std::vector<std::string> cells;
        std::istringstream parts(line.substr(1));
        for (std::string cell; std::getline(parts, cell, '|');)
            cells.push_back(cell.size() > 2 ? cell.substr(1, cell.size() - 2) : cell);
        if (cells.size() != 7) throw std::runtime_error("a row of the table has not seven cells: " + line);
        rows.push_back({cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], cells[6]});
    }
    return rows;
}

double figure(const std::string &cell) { return cell == "-" ? 0.0 : std::stod(cell); }

} // namespace accuracy
