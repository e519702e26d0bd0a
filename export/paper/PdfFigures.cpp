#include "paper/PdfFigures.hpp"

#include <cmath>
#include <iterator>
#include <sstream>

namespace sagitta {
namespace {

/// Gap between the object and an extension line, and how far that runs past the dimension line. mm.
constexpr double extension_gap = 1, extension_past = 1.5;
constexpr double stroke_reach = 0.9, text_lift = 1.1;

/// How many bytes of a text go into the width, at least one letter; UTF-8 is broken between letters only.
std::size_t part_within(PdfBook& book, double width, const std::string& text, Text size) {
  const auto next = [&](std::size_t at) {
    for (++at; at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80;) ++at;
    return at;
  };
  std::size_t part = next(0);
  while (part < text.size() && book.width_of(text.substr(0, next(part)), size) <= width) part = next(part);
  return part;
}

}  // namespace

DrawingScale scale_for(double length, double room, double most) {
  static const DrawingScale usual[] = {{20, "20:1"},  {10, "10:1"},   {5, "5:1"},     {2, "2:1"},
                                       {1, "1:1"},    {0.5, "1:2"},   {0.4, "1:2.5"}, {0.2, "1:5"},
                                       {0.1, "1:10"}, {0.05, "1:20"}, {0.02, "1:50"}};
  for (const DrawingScale& scale : usual)
    if (scale.factor <= most && scale.factor * length <= room) return scale;
  return *std::prev(std::end(usual));
}

void dimension(PdfBook& book, Point a, Point b, double off, const std::string& text) {
  const Point along = unit(b - a), aside = off < 0 ? -1 * left_of(along) : left_of(along);
  const double reach = std::abs(off), length = distance(a, b);
  const Point p = a + reach * aside, q = b + reach * aside;
  book.line(a + extension_gap * aside, p + extension_past * aside, Pen::thin);
  book.line(b + extension_gap * aside, q + extension_past * aside, Pen::thin);
  book.line(p, q, Pen::thin);
  const Point slant = stroke_reach * unit(along + left_of(along));
  for (const Point end : {p, q}) book.line(end - slant, end + slant, Pen::line);
  // Text is read from below or from the right.
  double turn = std::atan2(along.y, along.x);
  if (turn > std::numbers::pi / 2 + 0.01) turn -= std::numbers::pi;
  if (turn < -std::numbers::pi / 2 + 0.01) turn += std::numbers::pi;
  const Point up{-std::sin(turn), std::cos(turn)}, ahead{std::cos(turn), std::sin(turn)};
  const bool fits = book.width_of(text) < length - 1;
  if (fits)
    book.text(between(p, q, 0.5) + text_lift * up, text, Text::body, Align::centre, turn);
  else
    book.text((dot(q - p, ahead) > 0 ? q : p) + 1.5 * ahead + text_lift * up, text, Text::body, Align::left, turn);
}

void column(PdfBook& book, Point top, double width, const std::string& heading, const Rows& rows) {
  Point at = top;
  book.text(at, heading);
  book.line(at - Point{0, 1.4}, at + Point{width, -1.4}, Pen::thin);
  for (const auto& [name, figure] : rows) {
    at = at - Point{0, line_step + (&name == &rows.front().first ? 1 : 0)};
    book.text(at, name);
    book.text(at + Point{width, 0}, figure, Text::body, Align::right);
  }
}

void title(PdfBook& book, const std::string& head, const std::string& below) {
  const double top = book.height() - paper_margin;
  book.text({paper_margin, top - 3.5}, head, Text::head);
  book.text({paper_margin, top - 9}, below);
}

std::vector<std::string> lines_of(PdfBook& book, double width, const std::string& text, Text size) {
  std::istringstream words(text);
  std::vector<std::string> rows;
  std::string row;
  const auto end_row = [&] {
    if (!row.empty()) rows.push_back(std::move(row));
    row.clear();
  };
  for (std::string word; words >> word;) {
    if (!row.empty() && book.width_of(row + " " + word, size) > width) end_row();
    while (row.empty() && book.width_of(word, size) > width) {
      const std::size_t part = part_within(book, width, word, size);
      if (part == word.size()) break;
      rows.push_back(word.substr(0, part));
      word.erase(0, part);
    }
    row += (row.empty() ? "" : " ") + word;
  }
  end_row();
  return rows;
}

std::string cut_to(PdfBook& book, double width, const std::string& text, Text size) {
  if (book.width_of(text, size) <= width) return text;
  return text.substr(0, part_within(book, width - book.width_of("...", size), text, size)) + "...";
}

double paragraph(PdfBook& book, Point top, double width, const std::string& text) {
  double y = top.y;
  for (const std::string& row : lines_of(book, width, text)) {
    book.text({top.x, y}, row);
    y -= line_step;
  }
  return top.y - y;
}

Loop placed(const Loop& segments, double factor, Point origin) {
  Loop result = segments;
  for (CurveSegment& segment : result) {
    segment.a = origin + factor * segment.a;
    segment.b = origin + factor * segment.b;
    segment.centre = origin + factor * segment.centre;
    segment.radius *= factor;
  }
  return result;
}

}  // namespace sagitta
