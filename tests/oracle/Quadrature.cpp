#include "oracle/Quadrature.hpp"

#include "oracle/Events.hpp"
#include "oracle/Gauss.hpp"
#include "oracle/Hole.hpp"
#include "oracle/Section.hpp"

namespace sagitta::oracle {

/// A billionth of a board's volume is about 1e-4 mm^3; each stretch is driven far under its share of it.
constexpr double stretch_tolerance = 1e-8;

Volume quadrature(const Work& work) {
  const Sections sections(work);
  const std::vector<double> xs = events(sections);
  Volume volume;
  for (std::size_t i = 0; i + 1 < xs.size(); ++i) {
    const Integral part = integral([&](double x) { return sections.area(x); }, xs[i], xs[i + 1], stretch_tolerance);
    volume.value += part.value;
    volume.change += part.change;
  }
  for (std::size_t i = 0; i < work.holes.size(); ++i) volume.value -= hole_volume(work, sections, i);
  return volume;
}

Volume quadrature(const Board& board, const Layout& layout, const Surface& surface, Stage stage) {
  return quadrature(work_at(board, layout, surface, stage));
}

}  // namespace sagitta::oracle
