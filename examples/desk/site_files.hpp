// What a survey leaves in files: a CSV file for a spreadsheet, a portable graymap for a picture.
#pragma once

#include "survey.hpp"

namespace desk {

/// A row for every point that has a level.
std::string map_csv(const Survey &survey);
/// The margin over the floor, half a dB to a grey: 128 at the floor, 0 where there is no level. The first line of
/// the picture is the greatest y.
std::string map_pgm(const Survey &survey);
std::string walk_csv(const WalkSurvey &survey);

/// Throws Refusal where a file to write is named "-", is one that the program reads, or is named twice. The empty names
/// among those to write count for nothing.
void check_outputs(const std::vector<std::string> &write, const std::vector<std::string> &read);

/// Throws Refusal where the file cannot be written.
void write_whole_file(const std::string &path, const std::string &text);

} // namespace desk
