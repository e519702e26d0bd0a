#pragma once

/// What working drawings are put together from: dimensions, columns of figures, a title. Lengths in mm of paper.

#include <string>
#include <utility>
#include <vector>

#include "paper/PdfBook.hpp"

namespace sagitta {

/// From the paper's edge to what is drawn.
inline constexpr double paper_margin = 12;
/// From one line of body text to the next.
inline constexpr double line_step = 4.6;

/// A drawing scale, one millimetre of the board on paper.
struct DrawingScale {
  double factor = 1;
  std::string name;  ///< "1:2"
};
/// The largest of the usual scales (ISO 5455: 20:1, 10:1, 5:1, 2:1, 1:1, 1:2, 1:5, 1:10, .., and 1:2.5 between) at
/// which `length` fits into `room`, at most `most`. A board longer than all of them gets the smallest.
DrawingScale scale_for(double length, double room, double most);

/// A dimension between a and b, drawn at the distance `off` to the left of a -> b: two extension lines, a dimension
/// line with slanted strokes at its ends, the text over it, or beside it where it is too long to stand between them.
void dimension(PdfBook& book, Point a, Point b, double off, const std::string& text);

/// Names on the left, figures flush on the right, downward from `top` over `width`.
using Rows = std::vector<std::pair<std::string, std::string>>;
void column(PdfBook& book, Point top, double width, const std::string& heading, const Rows& rows);

/// Title in the upper left corner and what the sheet is in the line below it.
void title(PdfBook& book, const std::string& head, const std::string& below);

/// The text in lines of at most `width`, broken between words; a word that is wider alone is broken where it must be.
std::vector<std::string> lines_of(PdfBook& book, double width, const std::string& text, Text size = Text::body);

/// The text, or as much of its beginning as goes into `width` with "..." behind it.
std::string cut_to(PdfBook& book, double width, const std::string& text, Text size = Text::body);

/// Text set in lines of at most `width`, downward from `top`; the height that it took.
double paragraph(PdfBook& book, Point top, double width, const std::string& text);

/// The pieces larger by the factor, about the frame's origin, which then lies at `origin`.
Loop placed(const Loop& segments, double factor, Point origin);

}  // namespace sagitta
