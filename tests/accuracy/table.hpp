// The table of accuracies as the documentation prints it.
#pragma once

#include "accuracy/kernels.hpp"
#include "accuracy/measure.hpp"

#include <string>
#include <vector>

namespace accuracy {

/// A row, written or read.
struct Row {
    std::string function, range, stated, points, ulp, near_zero, plain;
};

Row row_of(const support::Function &scalar, const Measured &measured);
Row row_of(const Kernel &kernel, const Measured &measured);
std::string text_of(const Row &row);

/// The rows of a text that was written by text_of; other lines do not count.
std::vector<Row> rows_in(const std::string &text);

/// The figure that a cell begins with, rounded up when it was written; 0 for "-".
double figure(const std::string &cell);

/// A figure rounded up to two decimals (units in the last place) or to two digits.
std::string rounded_up(double value);

} // namespace accuracy
