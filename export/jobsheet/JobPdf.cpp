#include "jobsheet/JobPdf.hpp"

#include <algorithm>
#include <optional>

#include "paper/HoldDown.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/PdfFlow.hpp"
#include "paper/PdfTable.hpp"

namespace sagitta {
namespace {

/// mm of paper.
constexpr double head_height = 13, heading_height = 7.6, step_heading = 6.4, caption = 5, picture_gap = 5;
constexpr double before_part = 7, before_step = 5, before_item = 1, bullet = 3;
constexpr double done_box = 3.4;
constexpr double fact_name = 17, level_step = 5.4, level_width = 40;
/// A page that is filled to this part looks full.
constexpr double full_page = 0.75;

/// How large the pictures are.
struct Sizes {
  double pictures = 1;      ///< times the usual size
  double hold_down = 0.42;  ///< of the paper's height, what a hold-down takes at most
};

/// What is tried, the usual first. Closer settings bring the last lines back to the page before; wider ones fill it.
constexpr Sizes sizes_tried[] = {{1, 0.42}, {1, 0.34}, {1, 0.5}, {0.8, 0.42}, {0.8, 0.34}, {0.8, 0.5}};
constexpr double gaps_tried[] = {1, 1.3, 0.7, 1.6, 2, 2.5};

FlowArea area_on(const Paper& paper) {
  return {paper,
          {{paper_margin, paper_margin}, {paper.width - paper_margin, paper.height - paper_margin - head_height}}};
}

/// Turns the sheet into blocks: the board, the walk step by step, the tables.
class JobPages {
 public:
  /// `ruler`: text is measured on it; it is never finished.
  JobPages(const JobSheet& sheet, const JobPictures& pictures, const Paper& paper, PdfBook& ruler, const Sizes& sizes)
      : sheet_(sheet), pictures_(pictures), area_(area_on(paper)), ruler_(ruler), sizes_(sizes) {
    board();
    table("Tool changes, in order", sheet_.tools);
    table("Time of cutting, without moves and tool changes", sheet_.clock);
    if (!sheet_.no_clock.empty()) list("Time of cutting", {sheet_.no_clock}, "");
    list("Findings of the whole board", sheet_.findings, "None.");
    list("Cautions", sheet_.cautions, "None.");
    table("Pieces", sheet_.pieces);
    if (!sheet_.notes.empty()) list("Notes", sheet_.notes, "");
    if (!sheet_.done.empty()) list("Cut already", sheet_.done, "");
    table("As measured", sheet_.record);
    for (std::size_t i = 0; i < sheet_.walk.size(); ++i) walk(sheet_.walk[i], i + 1);
    part_ = "";
    tables();
  }

  /// How far the emptiest page is filled with such gaps, 0 to 1; they are kept.
  double least_fill(double gaps) {
    area_.gaps = gaps;
    const std::vector<double> fills = page_fills(area_, blocks_);
    return *std::ranges::min_element(fills);
  }

  /// Takes the first gaps that fill every page, else those that fill the emptiest most; how far that is filled.
  double fit() {
    double least = -1, best = 1;
    for (const double gaps : gaps_tried) {
      if (const double fill = least_fill(gaps); fill > least) least = fill, best = gaps;
      if (least >= full_page) break;
    }
    area_.gaps = best;
    return least;
  }

  PdfBook print() const {
    PdfBook book(sheet_.title);
    print_flow(book, area_, blocks_,
               [&](PdfBook& on, int page, int pages, const std::string& part) { head(on, page, pages, part); });
    return book;
  }

 private:
  void tables() {
    table("Check by caliper", sheet_.checks);
    table("Material", sheet_.material);
    if (!sheet_.no_room.empty()) list("Pieces without a sheet", sheet_.no_room, "");
    table("Sheets", sheet_.sheets);
    if (std::ranges::none_of(sheet_.walk, shows_wire)) table("Wire", sheet_.wire);
    if (std::ranges::none_of(sheet_.walk, shows_lines)) table("Lines", sheet_.lines);
  }

  double width() const { return area_.column(); }

  void add(FlowBlock block) {
    block.part = part_;
    blocks_.push_back(std::move(block));
  }

  void head(PdfBook& book, int page, int pages, const std::string& part) const {
    const double left = paper_margin, right = book.width() - paper_margin, top = book.height() - paper_margin;
    const std::string number = "Page " + std::to_string(page) + " of " + std::to_string(pages);
    book.text({right, top - 3.5}, number, Text::body, Align::right);
    book.text({left, top - 3.5}, cut_to(book, right - left - book.width_of(number) - 8, sheet_.title, Text::head),
              Text::head);
    const std::string units = "All lengths in " + sheet_.units + ".";
    book.text({left, top - 9}, units);
    if (!part.empty())
      book.text({right, top - 9}, cut_to(book, right - left - book.width_of(units) - 8, part), Text::body,
                Align::right);
  }

  void heading(const std::string& words, bool wide = false) {
    FlowBlock block;
    block.height = heading_height;
    block.before = before_part;
    block.with_next = true;
    block.wide = wide;
    block.paint = [words](PdfBook& book, Point corner, double all) {
      book.text(corner - Point{0, 4.2}, cut_to(book, all, words, Text::head), Text::head);
      book.line(corner - Point{0, 6.2}, corner + Point{all, -6.2}, Pen::line);
    };
    add(block);
  }

  /// Lines one below the other, with a dash before the first.
  void item(const std::string& text) {
    const std::vector<std::string> lines = lines_of(ruler_, width() - bullet, text);
    FlowBlock block;
    block.height = line_step * static_cast<double>(lines.size());
    block.before = before_item;
    block.paint = [lines](PdfBook& book, Point corner, double) {
      double y = corner.y - line_step + 1.2;
      book.line({corner.x, y + 1}, {corner.x + 1.4, y + 1}, Pen::line);
      for (const std::string& each : lines) {
        book.text({corner.x + bullet, y}, each);
        y -= line_step;
      }
    };
    add(block);
  }

  void words(const std::string& text) {
    FlowBlock block;
    block.height = line_step;
    block.paint = [text](PdfBook& book, Point corner, double) { book.text(corner - Point{0, 3.4}, text); };
    add(block);
  }

  void list(const std::string& name, const std::vector<std::string>& items, const std::string& none) {
    heading(name);
    if (items.empty()) words(none);
    for (const std::string& each : items) item(each);
  }

  void table(const std::string& name, const JobTable& table) {
    if (table.rows.empty()) return;
    heading(name);
    for (FlowBlock& block : table_blocks(ruler_, width(), {table.heads, table.rows, "measured"})) add(std::move(block));
  }

  /// A table at its step, folded where it is narrow.
  void step_table(const JobTable& table) {
    for (FlowBlock& block : table_blocks(ruler_, width(), folded(ruler_, width(), {table.heads, table.rows, ""})))
      add(std::move(block));
  }

  /// The board's picture and what it is in short.
  void board() {
    heading("The board");
    if (const auto found = pictures_.find(sheet_.picture); found != pictures_.end()) {
      const double wide = std::min(width(), ruler_.sharp_width(found->second));
      const double height = sizes_.pictures * std::min(wide / ruler_.shape_of(found->second), 0.3 * area_.paper.height);
      FlowBlock block;
      block.height = height + 1;
      block.with_next = true;
      block.paint = [png = &found->second, height, wide = height * ruler_.shape_of(found->second)](
                        PdfBook& book, Point corner, double) {
        book.image(*png, {corner - Point{0, height}, corner + Point{wide, 0}});
      };
      add(block);
    }
    for (FlowBlock& block : table_blocks(ruler_, width(), {sheet_.facts.heads, sheet_.facts.rows, ""}))
      add(std::move(block));
  }

  void walk(const WalkStep& step, std::size_t number) {
    const JobSetup* setup = step.setup < 0 ? nullptr : &sheet_.setups[static_cast<std::size_t>(step.setup)];
    if (setup && step.kind == WalkKind::set_up) {
      set_up_ = setup->title;
      part_ = set_up_;
      step_heading_of(step, number, true);
      hold_down(*setup);
    } else {
      part_ = (set_up_.empty() || !step.machine ? "Step " : set_up_ + ", step ") + std::to_string(number) + ": " +
              step.title;
      step_heading_of(step, number, false);
    }
    words_of("need", step.need);
    words_of("do", step.act);
    if (!step.act.empty() && !step.levels.empty()) blocks_.back().with_next = true;
    if (setup && step.kind == WalkKind::set_up) {
      for (const std::string& note : setup->notes) item(note);
      levels(setup->levels);
    }
    if (!step.levels.empty()) levels(step.levels);
    if (shows_wire(step)) step_table(sheet_.wire);
    if (shows_lines(step)) step_table(sheet_.lines);
    if (setup && step.job >= 0) job(setup->steps[static_cast<std::size_t>(step.job)]);
    ticks(step.ticks);
    words_of("check", step.check);
    words_of("beware", step.wrong);
    words_of("finding", step.findings);
  }

  void words_of(const std::string& name, const std::vector<std::string>& items) {
    for (const std::string& each : items) fact(&each == &items.front() ? name : std::string(), each, false);
  }

  /// The step's name with a box to tick at its right.
  void step_heading_of(const WalkStep& step, std::size_t number, bool wide) {
    FlowBlock block;
    block.height = step_heading;
    block.before = wide ? before_part : before_step;
    block.with_next = true;
    block.wide = wide;
    block.paint = [words = std::to_string(number) + ". " + step.title, style = wide ? Text::head : Text::strong,
                   where = step.machine ? "machine" : "bench"](PdfBook& book, Point corner, double all) {
      book.text(corner - Point{0, 3.6}, cut_to(book, all - 24, words, style), style);
      book.text(corner + Point{all - done_box - 2, -3.6}, where, Text::body, Align::right);
      book.path(rectangle(corner + Point{all - done_box, -4}, corner + Point{all, done_box - 4}), true, Pen::line);
      book.line(corner - Point{0, 5}, corner + Point{all, -5}, Pen::thin);
    };
    add(block);
  }

  void hold_down(const JobSetup& setup) {
    const Box& blank = setup.hold_down.drawing.page;
    const Point size = blank.high - blank.low;
    const double all = area_.box.high.x - area_.box.low.x,
                 tall = sizes_.hold_down * area_.paper.height - hold_down_foot;
    const DrawingScale scale = scale_for(size.x, std::min(all - 2 * hold_down_side, tall / size.y * size.x), 1);
    const std::string below = "The blank from above, " + scale.name +
                              ": its centre lines, where clamps may stand, what is cut; the cross in the circle is the "
                              "zero. In true size: setups/" +
                              setup.folder;
    FlowBlock block;
    block.height = scale.factor * size.y + hold_down_foot + caption;
    block.wide = true;
    block.with_next = true;
    block.paint = [hold_down = setup.hold_down, scale, size, below, height = block.height](PdfBook& book, Point corner,
                                                                                           double wide) {
      paint_hold_down(book, hold_down, scale.factor, corner + Point{wide / 2, -scale.factor * size.y / 2 - 1});
      book.text({corner.x, corner.y - height + 2}, cut_to(book, wide, below));
    };
    add(block);
  }

  /// The blank from its end, heights not to scale.
  void levels(const std::vector<JobLevel>& all) {
    FlowBlock block;
    block.height = level_step * static_cast<double>(all.size() - 1) + 2 * line_step;
    block.before = 2;
    block.paint = [all, height = block.height](PdfBook& book, Point corner, double width) {
      const double left = corner.x + 6, right = left + std::min(level_width, width / 2);
      double y = corner.y - height + line_step;
      for (const JobLevel& level : all) {
        if (!level.above.empty()) {
          book.fill(rectangle({left, y}, {right, y + level_step}), level.above.starts_with("board") ? 0.86 : 0.96);
          book.text({(left + right) / 2, y + level_step / 2 - 1}, level.above, Text::body, Align::centre);
        }
        book.line({left - 2, y}, {right + 6, y}, level.zero ? Pen::outline : Pen::thin);
        if (level.zero) mark_zero(book, {left - 3, y}, 3);
        book.text({right + 8, y - 1}, cut_to(book, corner.x + width - right - 8, level.what + ", " + level.z));
        y += level_step;
      }
    };
    add(block);
  }

  /// What the machine does at a step.
  void job(const JobStep& step) {
    for (const auto& each : step.facts) fact(each.first, each.second, &each == &step.facts.back());
    if (!step.before.empty() || !step.after.empty()) stock(step);
    ticks(step.ticks);
  }

  void ticks(const std::vector<std::string>& all) {
    for (FlowBlock& block : tick_blocks(ruler_, width(), all)) {
      block.before = 1.5;
      add(std::move(block));
    }
  }

  void fact(const std::string& name, const std::string& what, bool stays) {
    const std::vector<std::string> lines = lines_of(ruler_, width() - fact_name, what);
    FlowBlock block;
    block.height = line_step * static_cast<double>(lines.size());
    block.with_next = stays;
    block.paint = [name, lines](PdfBook& book, Point corner, double all) {
      double y = corner.y - line_step + 1.2;
      book.text({corner.x, y}, name);
      for (const std::string& each : lines) {
        book.text({corner.x + fact_name, y}, each);
        y -= line_step;
      }
      if (lines.empty() || !lines.back().ends_with(':')) return;
      y += line_step;  // to be filled in by hand
      book.line({corner.x + fact_name + book.width_of(lines.back()) + 1.5, y - 0.6}, {corner.x + all, y - 0.6},
                Pen::thin);
    };
    add(block);
  }

  /// The stock before and after, side by side.
  void stock(const JobStep& step) {
    const double each = sizes_.pictures * (width() - picture_gap) / 2;
    struct Shown {
      std::string words;
      const std::string* png = nullptr;
      double height = 0;
    };
    std::vector<Shown> shown;
    FlowBlock block;
    for (const auto& [when, stage] : {std::pair{"before: ", step.before}, std::pair{"after: ", step.after}}) {
      const auto found = pictures_.find(stage);
      Shown one{when + stage, found == pictures_.end() ? nullptr : &found->second, 0};
      if (one.png) one.height = each / ruler_.shape_of(*one.png);
      block.height = std::max(block.height, one.height + caption);
      shown.push_back(one);
    }
    block.before = 1;
    block.paint = [shown, each, height = block.height](PdfBook& book, Point corner, double) {
      double left = corner.x;
      for (const Shown& one : shown) {
        const double foot = corner.y - height + caption;
        if (one.png) book.image(*one.png, {{left, foot}, {left + each, foot + one.height}});
        book.text({left, corner.y - height + 1.5}, one.words);
        left += each + picture_gap;
      }
    };
    add(block);
  }

  const JobSheet& sheet_;
  const JobPictures& pictures_;
  FlowArea area_;
  PdfBook& ruler_;
  Sizes sizes_;
  std::vector<FlowBlock> blocks_;
  std::string part_, set_up_;
};

}  // namespace

PdfBook job_book(const JobSheet& sheet, const JobPictures& pictures, const Paper& paper) {
  PdfBook ruler("");
  ruler.page(paper);
  std::optional<JobPages> best;
  double least = 0;
  for (const Sizes& sizes : sizes_tried) {
    JobPages pages(sheet, pictures, paper, ruler, sizes);
    const double fill = pages.fit();
    if (best && fill <= least) continue;
    least = fill;
    best.emplace(std::move(pages));
    if (least >= full_page) break;
  }
  return best->print();
}

}  // namespace sagitta
