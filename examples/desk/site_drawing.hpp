// A map or a walk in characters.
#pragma once

#include "site_view.hpp"

namespace desk {

/// A map; its first line is the lowest y.
class Drawing {
  public:
    /// Both must live as long as the drawing.
    Drawing(const Survey &survey, const View &view);

    /// Puts a mark on a point; another one on the same takes the cell's second character, or both become '*'.
    void mark(std::size_t column, std::size_t row, char letter);
    /// Whether the place lies on the map; then it gets the letter.
    bool mark_at(double x_m, double y_m, char letter);
    std::string print() const;
    /// Whether some line of the drawing holds that y.
    bool reaches(double y_m) const { return y_m >= edge(0) && y_m <= edge(grid_.rows); }
    /// "A character shows the worst of 5 by 10 squares."; empty where it shows one.
    std::string scale_words() const;

  private:
    // How many squares a character stands for. Characters are about twice as high as wide.
    struct Scale {
        std::size_t across = 1;
        std::size_t down = 1;
        std::size_t width = 2; // characters of a cell
    };
    static Scale scale_of(const Grid &grid);
    void fill(const Survey &survey, const View &view);
    double edge(std::size_t row) const; // the y between it and the row before

    const Grid &grid_;
    std::optional<double> stage_front_y_m_;
    Scale scale_;
    std::vector<std::string> lines_;
};

/// A walk from its beginning to its end, with the worst and the hottest point under it.
class Strip {
  public:
    Strip(const WalkSurvey &survey, const View &view);
    const std::string &print() const { return text_; }
    /// "A character shows the worst of 3 points."; empty where it shows one.
    std::string scale_words() const;

  private:
    std::size_t across_; // points that a character stands for
    std::string text_;
};

} // namespace desk
