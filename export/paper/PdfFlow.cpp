#include "paper/PdfFlow.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace sagitta {
namespace {

/// By how much columns grow while an even height is looked for.
constexpr double even_step = 2;
/// Sums of heights that should be the same.
constexpr double rounding = 1e-6;

struct PlacedBlock {
  const FlowBlock* block = nullptr;
  int page = 0;
  Point corner;
  double width = 0;
};

class Flow {
 public:
  Flow(const FlowArea& area, const std::vector<FlowBlock>& blocks)
      : area_(area), blocks_(blocks), top_(area.box.high.y) {}

  std::vector<PlacedBlock> placed() {
    for (std::size_t at = 0; at < blocks_.size();) at = blocks_[at].wide ? place_wide(at) : place_columns(at);
    return std::move(placed_);
  }
  int pages() const { return page_ + 1; }

 private:
  double room() const { return top_ - area_.box.low.y; }
  double before(const FlowBlock& block) const { return area_.gaps * block.before; }
  bool page_begins() const { return top_ == area_.box.high.y; }
  void next_page() {
    ++page_;
    top_ = area_.box.high.y;
  }

  /// Height of the block and of those that must stay with it, from the top of a column.
  double chain(std::size_t at) const {
    double height = blocks_[at].height;
    for (; blocks_[at].with_next && at + 1 < blocks_.size(); ++at)
      height += before(blocks_[at + 1]) + blocks_[at + 1].height;
    return height;
  }

  std::size_t place_wide(std::size_t at) {
    const double gap = page_begins() ? 0 : before(blocks_[at]);
    if (gap + chain(at) > room() + rounding && !page_begins()) {
      next_page();
      return at;
    }
    top_ -= gap;
    placed_.push_back({&blocks_[at], page_, {area_.box.low.x, top_}, area_.box.high.x - area_.box.low.x});
    top_ -= blocks_[at].height;
    return at + 1;
  }

  /// All blocks up to the next wide one or to the page's end.
  std::size_t place_columns(std::size_t at) {
    std::size_t end = at;
    while (end < blocks_.size() && !blocks_[end].wide) ++end;
    const double gap = page_begins() ? 0 : before(blocks_[at]);
    if (gap + chain(at) > room() + rounding && !page_begins()) {
      next_page();
      return at;
    }
    top_ -= gap;
    std::size_t next = fill(at, end, room(), false);
    double height = room();
    if (next == end)
      for (double even = std::min(room(), even_step); even < room(); even += even_step)
        if (fill(at, end, even, false) == end) {
          height = even;
          break;
        }
    next = fill(at, end, height, true);
    if (next < end)
      next_page();
    else
      top_ = lowest_;
    return next;
  }

  /// Fills the columns down to `height`; gives the first block that has no room. Nothing that stays with it is cut off.
  std::size_t fill(std::size_t at, std::size_t end, double height, bool keep) {
    lowest_ = top_;
    for (int column = 0; column < area_.columns() && at < end; ++column) {
      const double left = area_.box.low.x + column * (area_.column() + area_.gutter);
      double y = top_;
      const auto put = [&](const FlowBlock& block) {
        if (keep) placed_.push_back({&block, page_, {left, y}, area_.column()});
        y -= block.height;
      };
      for (; at < end; ++at) {
        const FlowBlock& block = blocks_[at];
        const bool first = y == top_;
        const double heading = first && block.heading ? block.heading->height : 0;
        const double wanted = (first ? heading : before(block)) + chain(at);
        // The first column must take something, or no page ever would.
        if (top_ - y + wanted > height + rounding &&
            !(first && height >= area_.box.high.y - area_.box.low.y - rounding))
          break;
        if (first && block.heading)
          put(*block.heading);
        else if (!first)
          y -= before(block);
        put(block);
      }
      lowest_ = std::min(lowest_, y);
    }
    return at;
  }

  const FlowArea& area_;
  const std::vector<FlowBlock>& blocks_;
  std::vector<PlacedBlock> placed_;
  int page_ = 0;
  double top_ = 0, lowest_ = 0;
};

}  // namespace

int FlowArea::columns() const {
  return std::max(1, static_cast<int>(std::floor((box.high.x - box.low.x + gutter) / (least_column + gutter))));
}

double FlowArea::column() const { return (box.high.x - box.low.x + gutter) / columns() - gutter; }

std::vector<double> page_fills(const FlowArea& area, const std::vector<FlowBlock>& blocks) {
  const std::size_t columns = static_cast<std::size_t>(area.columns());
  const double high = area.box.high.y - area.box.low.y, step = area.column() + area.gutter;
  std::vector<std::vector<double>> used;
  for (const PlacedBlock& placed : Flow(area, blocks).placed()) {
    used.resize(std::max(used.size(), static_cast<std::size_t>(placed.page) + 1), std::vector<double>(columns));
    std::vector<double>& page = used[static_cast<std::size_t>(placed.page)];
    const double down = area.box.high.y - placed.corner.y + placed.block->height;
    const auto own = static_cast<std::size_t>(std::lround((placed.corner.x - area.box.low.x) / step));
    for (std::size_t i = 0; i < columns; ++i)
      if (placed.block->wide || i == own) page[i] = std::max(page[i], std::min(down / high, 1.0));
  }
  std::vector<double> fills;
  for (const std::vector<double>& page : used)
    fills.push_back(std::accumulate(page.begin(), page.end(), 0.0) / static_cast<double>(columns));
  return fills;
}

void print_flow(PdfBook& book, const FlowArea& area, const std::vector<FlowBlock>& blocks, const PageHead& head) {
  Flow flow(area, blocks);
  int page = -1;
  for (const PlacedBlock& placed : flow.placed()) {
    for (; page < placed.page;) {
      book.page(area.paper);
      head(book, ++page + 1, flow.pages(), placed.block->part);
    }
    placed.block->paint(book, placed.corner, placed.width);
  }
}

}  // namespace sagitta
