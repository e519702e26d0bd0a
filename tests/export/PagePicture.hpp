#pragma once

/// A page of a PDF as pdftoppm rasterises it: grey, 600 dots an inch.

#include <gtest/gtest.h>

#include <cmath>

#include "CommandLine.hpp"

namespace sagitta::test {

class PagePicture {
 public:
  static constexpr int dpi = 600;

  PagePicture(const fs::path& pdf, int page) {
    const ScratchFolder scratch;
    const std::string number = std::to_string(page), to = (scratch / "page").string();
    const Outcome made = shell("pdftoppm -gray -r 600 -singlefile -f " + number + " -l " + number + " '" +
                               pdf.string() + "' '" + to + "'");
    if (made.code != 0) throw std::runtime_error(made.err);
    const std::string bytes = bytes_of(to + ".pgm");
    std::istringstream head(bytes);
    std::string kind;
    int most = 0;
    head >> kind >> columns_ >> rows_ >> most;
    if (kind != "P5" || most != 255) throw std::runtime_error("not a grey picture");
    pixels_ = bytes.substr(static_cast<std::size_t>(head.tellg()) + 1);
  }

  double width() const { return columns_ / per_mm(); }
  double height() const { return rows_ / per_mm(); }

  /// Middles of the dark runs along the row at y (from the bottom) between two x, mm from the left; the ink's middle
  /// of gravity.
  std::vector<double> runs_along(double y, double from, double to) const {
    const int row = rows_ - 1 - static_cast<int>(y * per_mm());
    return runs(from, to, columns_, [&](int i) { return ink(i, row); });
  }
  /// The same up the column at x; mm from the bottom.
  std::vector<double> runs_up(double x, double from, double to) const {
    const int column = static_cast<int>(x * per_mm());
    return runs(from, to, rows_, [&](int i) { return ink(column, rows_ - 1 - i); });
  }

 private:
  static double per_mm() { return dpi / 25.4; }
  int ink(int column, int row) const {
    return 255 - static_cast<unsigned char>(pixels_.at(static_cast<std::size_t>(row) * columns_ + column));
  }
  template <class Ink>
  static std::vector<double> runs(double from, double to, int count, Ink ink_at) {
    std::vector<double> middles;
    double weight = 0, moment = 0;
    const int last = std::min(count - 1, static_cast<int>(to * per_mm()));
    for (int i = std::max(0, static_cast<int>(from * per_mm())); i <= last + 1; ++i) {
      const int dark = i > last ? 0 : ink_at(i);
      if (dark > 32) {
        weight += dark, moment += dark * (i + 0.5);
      } else if (weight > 0) {
        middles.push_back(moment / weight / per_mm());
        weight = moment = 0;
      }
    }
    return middles;
  }

  int columns_ = 0, rows_ = 0;
  std::string pixels_;
};

}  // namespace sagitta::test
