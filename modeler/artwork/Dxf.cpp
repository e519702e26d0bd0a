#include "artwork/Dxf.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "artwork/Colour.hpp"
#include "artwork/DxfCurves.hpp"
#include "artwork/OutlineClusters.hpp"
#include "artwork/ReadArtwork.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double degree = std::numbers::pi / 180;
/// Entities that are looked at, copies by blocks counted.
constexpr std::size_t most_entities = 400'000;

struct DxfUnit {
  int code;
  double mm;
};
/// Values of $INSUNITS.
constexpr DxfUnit dxf_units[] = {{1, 25.4},   {2, 304.8},  {4, 1},      {5, 10},  {6, 1000},
                                 {9, 0.0254}, {10, 914.4}, {13, 0.001}, {14, 100}};

/// What a block is put in with: its frame, and the colour and layer that its entities may take over.
struct Around {
  Affine frame;
  std::string colour = "#000000", layer = "0";
  int depth = 0;
};

class DxfDrawing {
 public:
  DxfDrawing(const DxfFile& file, Units units) : file_(file), notes_(units) {}

  std::variant<DrawnShapes, Faults> read() {
    if (!walk()) return faults_;
    for (auto& [colour, runs] : runs_)
      if (!nest(colour, chained(std::move(runs), notes_))) return faults_;
    std::stable_sort(ranked_.begin(), ranked_.end(), [](const Ranked& a, const Ranked& b) { return a.area > b.area; });
    DrawnShapes out;
    for (Ranked& ranked : ranked_) out.shapes.push_back(std::move(ranked.shape));
    out.notes = notes_.faults();
    return out;
  }

  std::variant<std::vector<Run>, Faults> read_runs() {
    if (!walk()) return faults_;
    std::vector<Run> all;
    for (auto& [colour, runs] : runs_)
      for (Run& run : runs) all.push_back(std::move(run));
    return all;
  }

 private:
  bool walk() {
    Around around;
    around.frame = scale_by(unit(), unit());
    return entities(file_.entities, around);
  }

  struct Ranked {
    double area;
    DrawnShape shape;
  };

  bool fail(FaultCode code, const std::string& where, const std::string& what, const std::string& hint) {
    faults_.push_back({code, "", where + ": " + what, hint});
    return false;
  }

  double unit() {
    const int code = file_.units.value_or(0);
    for (const DxfUnit& one : dxf_units)
      if (one.code == code) return one.mm;
    notes_.add("", "the drawing does not say its unit ($INSUNITS); millimetres were taken",
               "the size on the board is set there; ends are joined when they are within " +
                   notes_.length(tolerance::drawn_join));
    return 1;
  }

  bool entities(const std::vector<DxfEntity>& all, const Around& around) {
    for (const DxfEntity& one : all)
      if (!entity(one, around)) return false;
    return true;
  }

  bool entity(const DxfEntity& one, const Around& around) {
    if (++looked_at_ > most_entities)
      return fail(FaultCode::drawing_too_complex, one.where(),
                  "the drawing has more than 400,000 entities, copies counted", "simplify it, or split it");
    if (one.whole(67) == 1 || one.whole(60) == 1) return true;  // on the paper's side, or hidden
    std::string layer(one.text(8).value_or("0"));
    if (layer == "0") layer = around.layer;
    const auto found = file_.layers.find(layer);
    if (found != file_.layers.end() && !found->second.shown) {
      notes_.add(one.where(), "what is on a layer that is switched off was left out",
                 "switch the layer on if it is meant");
      return true;
    }
    const bool insert = one.type == "INSERT";
    if (!insert && !is_dxf_curve(one)) return left_out(one);
    const auto plane = dxf_plane(one);
    if (!plane) {
      notes_.add(one.where(), "what stands on a tilted plane was left out", "draw it flat");
      return true;
    }
    Around inside = around;
    inside.frame = around.frame * *plane;
    inside.layer = layer;
    inside.colour = colour_of(one, layer, around.colour);
    return insert ? put_in(one, inside) : curve(one, inside);
  }

  bool left_out(const DxfEntity& one) {
    for (const char* silent : {"ATTRIB", "ATTDEF", "SEQEND", "VIEWPORT", "POINT"})
      if (one.type == silent) return true;
    notes_.add(one.where(), std::string(one.type.substr(0, 40)) + " is no outline that is read and was left out",
               one.type == "HATCH" ? "its outline is read where it is drawn"
                                   : "turn it into lines and arcs in the drawing program");
    return true;
  }

  /// Group codes: 420 true colour, 62 index; 0 takes the block's colour, 256 the layer's.
  std::string colour_of(const DxfEntity& one, const std::string& layer, const std::string& of_block) const {
    const auto true_colour = [](int code) { return colour_code(code >> 16 & 255, code >> 8 & 255, code & 255); };
    if (one.text(420)) return true_colour(one.whole(420));
    const int index = one.whole(62, 256);
    if (index == 0) return of_block;
    if (index > 0 && index < 256) return index_colour(index);
    const auto found = file_.layers.find(layer);
    if (found == file_.layers.end()) return index_colour(7);
    if (found->second.true_colour) return true_colour(*found->second.true_colour);
    return index_colour(std::clamp(found->second.colour, 1, 255));
  }

  bool put_in(const DxfEntity& one, Around around) {
    if (++around.depth > most_nested)
      return fail(FaultCode::drawing_too_complex, one.where(), "blocks go more than 64 deep",
                  "check for a block that holds itself, or explode it");
    const auto found = file_.blocks.find(one.text(2).value_or(""));
    if (found == file_.blocks.end()) {
      notes_.add(one.where(),
                 "the block \"" + std::string(one.text(2).value_or("").substr(0, 40)) + "\" is not in the drawing",
                 "delete it, or draw what is missing");
      return true;
    }
    const int columns = std::max(1, one.whole(70, 1)), rows = std::max(1, one.whole(71, 1));
    const Affine turn = turn_by(std::fmod(one.number(50), 360) * degree);
    for (int row = 0; row < rows; ++row)
      for (int column = 0; column < columns; ++column) {
        Around copy = around;
        copy.frame =
            around.frame * shift_by(one.point(10)) * turn * shift_by({column * one.number(44), row * one.number(45)}) *
            scale_by(one.number(41, 1), one.number(42, 1)) * shift_by({-found->second.base.x, -found->second.base.y});
        if (!is_sound(copy.frame))
          return fail(FaultCode::drawing_too_complex, one.where(), "the scales here multiply to more than can be drawn",
                      "check them");
        if (++looked_at_ > most_entities)
          return fail(FaultCode::drawing_too_complex, one.where(),
                      "the drawing has more than 400,000 entities, copies counted", "simplify it, or split it");
        if (!entities(found->second.entities, copy)) return false;
      }
    return true;
  }

  static bool is_sound(const Affine& f) {
    constexpr double largest = 1e12;
    for (const double part : {f.a, f.b, f.c, f.d, f.e, f.f})
      if (!(std::abs(part) < largest)) return false;
    return true;
  }

  bool curve(const DxfEntity& one, const Around& around) {
    const auto drawn = dxf_curves(one);
    if (const auto* why = std::get_if<std::string>(&drawn)) {
      notes_.add(one.where(), *why, "draw it as lines, arcs or a spline with control points");
      return true;
    }
    const Subpath& trail = std::get<Subpath>(drawn);
    Run run{{}, one.where()};
    for (const Curve& part : trail.curves) draw(part, around.frame, run.strokes);
    segments_ += run.strokes.size();
    if (segments_ > most_segments)
      return fail(FaultCode::drawing_too_complex, one.where(),
                  "the drawing has more than 200,000 segments, copies counted", "simplify it, or split it");
    constexpr double widest = 1e6;
    const Box box = bounds(run.strokes);
    if (!run.strokes.empty() && !(std::abs(box.low.x) < widest && std::abs(box.low.y) < widest &&
                                  std::abs(box.high.x) < widest && std::abs(box.high.y) < widest))
      return fail(FaultCode::drawing_too_complex, one.where(), "this reaches more than a kilometre",
                  "check $INSUNITS and the scales");
    if (!run.strokes.empty()) runs_[around.colour].push_back(std::move(run));
    return true;
  }

  /// Outlines of one colour into shapes: how many others lie around one says whether it is an outer one or a hole.
  bool nest(const std::string& colour, std::vector<PathLoop> loops) {
    Box all;
    for (const PathLoop& loop : loops) {
      const Box box = bounds(loop);
      all.add(box.low);
      all.add(box.high);
    }
    const double side = loops.empty() ? 1 : std::max(all.high.x - all.low.x, all.high.y - all.low.y);
    const double chord = std::max(side * tolerance::drawn_chord, tolerance::same);
    Outlines outlines;
    for (PathLoop& loop : loops) outlines.push_back(make_outline(std::move(loop), chord));
    std::stable_sort(outlines.begin(), outlines.end(),
                     [](const Outline& a, const Outline& b) { return std::abs(a.area) > std::abs(b.area); });
    std::vector<std::size_t> depth(outlines.size()), shape_of(outlines.size());
    for (std::size_t i = 0; i < outlines.size(); ++i) {
      if (!effort_.spend(static_cast<double>(i)))
        return fail(FaultCode::drawing_too_complex, colour,
                    "there are more outlines in one another than can be sorted out", "split the drawing");
      std::size_t around = i;  // the smallest that lies around it
      for (std::size_t j = 0; j < i; ++j)
        if (holds(outlines[j].box, outlines[i].box) &&
            effort_.spend(4.0 * static_cast<double>(outlines[j].corners.size())) &&
            winding(outlines[j], witness(outlines[i], outlines[j], 4 * chord)) != 0)
          around = j;
      depth[i] = around == i ? 0 : depth[around] + 1;
      if (depth[i] % 2 != 0) {
        shape_of[i] = shape_of[around];
        ranked_[shape_of[i]].shape.loops.push_back(outlines[i].strokes);
        continue;
      }
      shape_of[i] = ranked_.size();
      ranked_.push_back({std::abs(outlines[i].area), {{outlines[i].strokes}, FillRule::evenodd, colour, colour}});
    }
    return true;
  }

  const DxfFile& file_;
  std::map<std::string, std::vector<Run>> runs_;
  std::vector<Ranked> ranked_;
  Notes notes_;
  Faults faults_;
  Effort effort_;
  std::size_t looked_at_ = 0, segments_ = 0;
};

}  // namespace

std::variant<DrawnShapes, Faults> dxf_shapes(std::string_view text, Units units) {
  const auto file = read_dxf(text);
  if (const Faults* faults = std::get_if<Faults>(&file)) return *faults;
  return DxfDrawing(std::get<DxfFile>(file), units).read();
}

std::variant<std::vector<Run>, Faults> dxf_runs(std::string_view text, Units units) {
  const auto file = read_dxf(text);
  if (const Faults* faults = std::get_if<Faults>(&file)) return *faults;
  return DxfDrawing(std::get<DxfFile>(file), units).read_runs();
}

bool dxf_says_its_size(std::string_view text) {
  const auto read = read_dxf(text);
  const DxfFile* file = std::get_if<DxfFile>(&read);
  return file && std::any_of(std::begin(dxf_units), std::end(dxf_units),
                             [&](const DxfUnit& unit) { return unit.code == file->units.value_or(0); });
}

}  // namespace sagitta
