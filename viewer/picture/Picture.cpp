#include "picture/Picture.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "gpu/Gl.hpp"
#include "plan/OutlinedStage.hpp"
#include "scene/HeightSpan.hpp"

namespace sagitta::viewer {

namespace {

constexpr int samples = 4;
/// Pixels along each side of the picture while things move and the processor draws, as a share of those at rest.
constexpr float moving_share = 0.75f;
constexpr double least_change = 0.01;  ///< mm that fill the scale of differences at least

const RenderMesh nothing;

float thickest_piece(const Model& model) {
  double most = least_change;
  if (model.prepared)
    for (const InlayPiece& piece : model.prepared->inlays().pieces) most = std::max(most, piece.thickness);
  return static_cast<float>(most);
}

/// All of the blank, from above and a little aside, so that floors show their walls.
Camera strip_look(Camera camera, const Layout& layout) {
  constexpr float turn = -0.3f, rise = 1.05f;
  camera.turn = turn, camera.rise = rise;
  const auto corner = [&](Point p, double z) {
    return Vec{static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)};
  };
  return camera.fitted(corner(layout.blank.low, 0), corner(layout.blank.high, layout.blank_thickness));
}

/// Sets each vertex's `change`: how much higher this stage's top lies than the other board's surface, mm.
/// Returns the largest amount.
double mark_changes(RenderMesh& body, const Surface& other) {
  double largest = 0;
  for (RenderVertex& v : body.vertices) {
    const bool comparable = v.normal.z > 0.5f && other.exists(v.position.x, v.position.y);
    v.change = comparable ? static_cast<float>(v.position.z - other.height(v.position.x, v.position.y)) : 0;
    if (std::abs(v.change) < 0.5f * static_cast<float>(other.thickness))
      largest = std::max(largest, std::abs(static_cast<double>(v.change)));
  }
  return largest;
}

/// What of the shadow's shape lies beyond x: its first and last corners, on the nut's side, move there.
Footprint cut_off(Footprint foot, float x) {
  for (const auto& [near, far] : {std::pair<std::size_t, std::size_t>{0, 1}, {3, 2}}) {
    const float whole = foot[far][0] - foot[near][0];
    const float part = std::clamp((x - foot[near][0]) / (whole != 0 ? whole : 1), 0.0f, 0.999f);
    for (std::size_t k = 0; k < 2; ++k) foot[near][k] += part * (foot[far][k] - foot[near][k]);
  }
  return foot;
}

}  // namespace

Footprint footprint_of(const Model& model, Stage stage) {
  const Layout& l = model.prepared->layout();
  const auto f = [](double v) { return static_cast<float>(v); };
  if (!is_outlined(stage)) {
    const Box& b = l.blank;
    return {
        {{f(b.low.x), f(b.low.y)}, {f(b.high.x), f(b.low.y)}, {f(b.high.x), f(b.high.y)}, {f(b.low.x), f(b.high.y)}}};
  }
  const double nut = l.nut_end, heel = l.heel_end;
  return {{{f(nut), f(-l.edge(0, nut))},
           {f(heel), f(-l.edge(0, heel))},
           {f(heel), f(l.edge(1, heel))},
           {f(nut), f(l.edge(1, nut))}}};
}

Showing showing_of(const View& v, const Results& results, double largest_change) {
  Showing s;
  const bool whole = is_outlined(v.stage);
  const NeckAs neck = results.good && results.good->fittings ? results.good->fittings->neck_as : NeckAs::none;
  const bool necked = whole && v.neck && neck != NeckAs::none;
  s.parts = {true, v.pieces, whole && v.frets, whole && v.strings, necked, results.comparison.has_value()};
  s.neck_solid = neck == NeckAs::solid;
  s.apart = v.apart;
  s.edges = v.edges;
  s.bench = !necked;
  s.shade = v.shade == Shade::change && !results.comparison ? Shade::materials : v.shade;
  if (v.cutting) s.cut = static_cast<float>(v.cut);
  s.lift = v.lift;
  if (!results.good) return s;
  if (s.shade == Shade::change) {
    s.span = {0, static_cast<float>(std::max(largest_change, least_change))};
  } else if (s.shade == Shade::remaining) {
    s.span = {0, thickest_piece(*results.good)};
  } else if (const StageModel* stage = results.at(v.stage)) {
    if (results.good->prepared)
      s.span = height_span(results.good->prepared->layout(), results.good->prepared->surface(), *stage);
  }
  return s;
}

Picture::Picture() : software_(gl::software_rendering()) {}

void Picture::resize(int width, int height, bool moving) {
  moving_ = moving && software_;
  const auto part = [](int pixels) { return static_cast<int>(static_cast<float>(pixels) * moving_share); };
  if (moving_)
    fast_.resize(part(width), part(height), 0);
  else
    fine_.resize(width, height, samples);
}

void Picture::load(const View& view, const Results& results) {
  if (!results.good) return;
  const auto stage = results.good->stages[static_cast<std::size_t>(view.stage)];
  const auto other = results.comparison && results.comparison->model
                         ? results.comparison->model->stages[static_cast<std::size_t>(view.stage)]
                         : nullptr;
  if (stage && (stage != loaded_ || other != compared_)) {
    if (other) {
      RenderMesh marked = stage->body;
      largest_change_ = mark_changes(marked, results.comparison->model->prepared->surface());
      scene_.load(Part::body, marked);
    } else {
      scene_.load(Part::body, stage->body);
    }
    scene_.load(Part::pieces, stage->pieces);
    scene_.load(Part::other, other ? other->body : nothing);
    loaded_ = stage, compared_ = other;
    ++loads_;
  }
  if (results.good->fittings != fitted_) {
    fitted_ = results.good->fittings;
    scene_.load(Part::frets, fitted_->frets);
    scene_.load(Part::strings, fitted_->strings);
    scene_.load(Part::neck, fitted_->neck);
    ++loads_;
  }
}

void Picture::refresh(const View& view, const Results& results, const Look& look) {
  load(view, results);
  Showing showing = showing_of(view, results, largest_change_);
  showing.quick = moving_;
  const Drawn now{view.camera, showing, look.dark, loads_, moving_, target().width(), target().height()};
  if (now == last_) return;
  if (results.laid_out()) {
    const Footprint whole = footprint_of(*results.good, loaded_ ? loaded_->stage : view.stage);
    scene_.cast_from(showing.cut ? cut_off(whole, *showing.cut) : whole);
  }
  scene_.draw(target(), now.camera, now.showing, look.ink);
  last_ = now;
  ++drawn_, ++changes_;
}

void Picture::resize_stages(int width, int height) {
  if (stages_width_ == width) return;
  stages_width_ = width;
  stage_drawn_ = {};
  for (Target& target : stage_targets_) target.resize(width, height, samples);
}

bool Picture::refresh_stages(const View& view, const Results& results, const Look& look) {
  if (!results.laid_out()) return false;
  if (stages_dark_ != look.dark || stages_pieces_ != view.pieces) {
    stage_drawn_ = {};
    stages_dark_ = look.dark, stages_pieces_ = view.pieces;
  }
  bool done = false;
  for (const Stage stage : stages_of(results.good->board)) {
    const auto i = static_cast<std::size_t>(stage);
    const auto& model = results.good->stages[i];
    if (!model || model == stage_drawn_[i]) continue;
    if (done) return true;
    stage_drawn_[i] = model;
    Target& target = stage_targets_[i];
    small_.load(Part::body, model->body);
    small_.load(Part::pieces, model->pieces);
    small_.cast_from(footprint_of(*results.good, stage));
    Camera camera;
    camera.width = static_cast<float>(target.width()), camera.height = static_cast<float>(target.height());
    camera = strip_look(camera, results.good->prepared->layout());
    Showing showing;
    showing.parts = {true, view.pieces, false, false, false, false};
    ++changes_;
    small_.draw(target, camera, showing, look.ink);
    small_.load(Part::body, nothing);
    small_.load(Part::pieces, nothing);
    done = true;
  }
  return false;
}

}  // namespace sagitta::viewer
