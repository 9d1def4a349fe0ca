#include "site_drawing.hpp"

#include "site_words.hpp"

#include <algorithm>

namespace desk {
namespace {

constexpr char blank = ' ';

constexpr std::size_t most_characters = 84;

std::size_t parts(std::size_t whole, std::size_t part) { return (whole + part - 1) / part; }

// Characters that may each stand for several points, of which it shows the worst.
class Marks {
  public:
    explicit Marks(std::size_t characters) : text_(characters, blank), badness_(characters, nothing) {}
    void show(std::size_t character, const Step &step) { show(character, step.badness, step.mark); }
    void show_unmodelled(std::size_t character) { show(character, unmodelled, unmodelled_mark); }
    const std::string &text() const { return text_; }

  private:
    static constexpr int nothing = -2, unmodelled = -1; // beside the badness of steps, which is 0 or more
    void show(std::size_t character, int badness, char mark) {
        if (badness <= badness_[character]) return;
        badness_[character] = badness;
        text_[character] = mark;
    }
    std::string text_;
    std::vector<int> badness_;
};

} // namespace

Drawing::Scale Drawing::scale_of(const Grid &grid) {
    constexpr std::size_t most_lines = 60;
    if (2 * grid.columns <= most_characters && grid.rows <= most_lines) return {};
    const std::size_t across = std::max(parts(grid.columns, most_characters), parts(grid.rows, 2 * most_lines));
    return {across, 2 * across, 1};
}

Drawing::Drawing(const Survey &survey, const View &view)
    : grid_(survey.grid), stage_front_y_m_(survey.site->stage_front_y_m), scale_(scale_of(survey.grid)),
      lines_(parts(grid_.rows, scale_.down)) {
    fill(survey, view);
}

void Drawing::fill(const Survey &survey, const View &view) {
    const std::size_t wide = parts(grid_.columns, scale_.across);
    Marks marks(wide * lines_.size());
    for (std::size_t i = 0; i < survey.size(); ++i) {
        const std::size_t cell = grid_.row_of(i) / scale_.down * wide + grid_.column_of(i) / scale_.across;
        if (!survey.is_blank(i)) marks.show(cell, view.step(i));
        else if (!survey.unmodelled.empty() && survey.unmodelled[i]) marks.show_unmodelled(cell);
    }
    for (std::size_t cell = 0; cell < marks.text().size(); ++cell)
        lines_[cell / wide].append(scale_.width, marks.text()[cell]);
}

void Drawing::mark(std::size_t column, std::size_t row, char letter) {
    const std::size_t x = column / scale_.across * scale_.width, y = row / scale_.down;
    char &first = lines_[y][x];
    const bool taken = first == 'W' || first == 'H';
    if (!taken) first = letter;
    else if (scale_.width > 1) lines_[y][x + 1] = letter;
    else first = '*';
}

bool Drawing::mark_at(double x_m, double y_m, char letter) {
    const double column = std::round((x_m - grid_.x_m) / grid_.step_m);
    const double row = std::round((y_m - grid_.y_m) / grid_.step_m);
    if (!(column >= 0.0 && column < static_cast<double>(grid_.columns) && row >= 0.0 &&
          row < static_cast<double>(grid_.rows)))
        return false;
    mark(static_cast<std::size_t>(column), static_cast<std::size_t>(row), letter);
    return true;
}

double Drawing::edge(std::size_t row) const { return grid_.y_m + (static_cast<double>(row) - 0.5) * grid_.step_m; }

std::string Drawing::print() const {
    constexpr std::size_t lines_between_labels = 5;
    std::string out;
    for (std::size_t line = lines_.size(); line-- > 0;) {
        const double low = edge(line * scale_.down);
        const double high = edge(std::min((line + 1) * scale_.down, grid_.rows));
        const bool labels = line % lines_between_labels == 0 || line + 1 == lines_.size();
        std::string text = labels ? format("  %8s |", plain(0.5 * (low + high)).c_str()) : "           |";
        text += lines_[line] + "|";
        const std::optional<double> &front = stage_front_y_m_;
        const bool top = line + 1 == lines_.size();
        if (front && *front >= low && (*front < high || (top && *front == high))) text += " stage front";
        out += text + "\n";
    }
    const std::size_t wide = lines_.front().size();
    const std::string left = plain(grid_.x_of(0)), right = plain(grid_.x_of(grid_.columns - 1));
    out += format("       x/m  %s%*s\n", left.c_str(),
                  static_cast<int>(std::max(wide > left.size() ? wide - left.size() : 0, right.size() + 1)),
                  right.c_str());
    return out;
}

std::string Drawing::scale_words() const {
    if (scale_.across == 1 && scale_.down == 1) return "";
    return "A character shows the worst of " + std::to_string(scale_.across) + " by " + std::to_string(scale_.down) +
           " squares.";
}

Strip::Strip(const WalkSurvey &survey, const View &view) : across_(parts(survey.size(), most_characters)) {
    Marks marks(parts(survey.size(), across_));
    for (std::size_t i = 0; i < survey.size(); ++i)
        if (survey.is_blank(i)) marks.show_unmodelled(i / across_);
        else marks.show(i / across_, view.step(i));
    const std::string &line = marks.text();
    std::string letters(line.size(), blank);
    const auto mark_at = [&](double at_m, char letter) {
        char &place = letters[survey.point_at(at_m) / across_];
        place = place == blank ? letter : '*';
    };
    if (survey.result.points > survey.result.unmodelled) {
        mark_at(survey.result.worst_m, 'W');
        mark_at(survey.result.hottest_m, 'H');
    }
    const std::string end = in_hundredths(survey.result.length_m);
    text_ = "           |" + line + "|\n" + "           |" + letters + "|\n" +
            format("   along/m  0%*s\n", static_cast<int>(std::max(line.size() - 1, end.size() + 1)), end.c_str());
}

std::string Strip::scale_words() const {
    return across_ == 1 ? "" : "A character shows the worst of " + std::to_string(across_) + " points.";
}

} // namespace desk
