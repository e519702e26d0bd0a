#include "mesh/Points.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Multiplication by 2^64 over the golden ratio: Knuth, The Art of Computer Programming, vol. 3, section 6.4. The upper
/// bits are those that depend on all others.
std::size_t hash(float x, float y) {
  const auto bits = [](float f) { return std::uint64_t{std::bit_cast<std::uint32_t>(f + 0.0f)}; };  // one zero only
  const std::uint64_t mixed = (bits(x) << 32 | bits(y)) * 0x9E3779B97F4A7C15u;
  return static_cast<std::size_t>((mixed ^ mixed >> 32) * 0x9E3779B97F4A7C15u >> 32);
}

}  // namespace

std::size_t Points::slot_of(Point p) const {
  const auto x = static_cast<float>(p.x), y = static_cast<float>(p.y);
  std::size_t slot = hash(x, y) & (slots_.size() - 1);
  while (slots_[slot] >= 0 && (points[slots_[slot]][0] != x || points[slots_[slot]][1] != y))
    slot = (slot + 1) & (slots_.size() - 1);
  return slot;
}

void Points::grow() {
  constexpr std::size_t least = 1024;
  const std::vector<int> old = std::move(slots_);
  slots_.assign(std::max(least, 2 * old.size()), -1);
  for (const int first : old)
    if (first >= 0) slots_[slot_of({points[first][0], points[first][1]})] = first;
}

int Points::at(Point p, double z) {
  if (2 * places_ >= slots_.size()) grow();
  int* link = &slots_[slot_of(p)];
  if (*link < 0) ++places_;
  for (; *link >= 0; link = &above_[*link])
    if (std::abs(points[*link][2] - z) <= 2 * tolerance::height) return *link;
  const int made = static_cast<int>(points.size());
  *link = made;
  points.push_back({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)});
  above_.push_back(-1);
  return made;
}

void Points::add_strictly_between(Point p, int low, int high, std::vector<int>& to) const {
  if (slots_.empty()) return;
  const auto first = static_cast<std::ptrdiff_t>(to.size());
  for (int i = slots_[slot_of(p)]; i >= 0; i = above_[i])
    if (points[i][2] > points[low][2] && points[i][2] < points[high][2]) to.push_back(i);
  std::sort(to.begin() + first, to.end(), [&](int a, int b) { return points[a][2] < points[b][2]; });
}

}  // namespace sagitta
