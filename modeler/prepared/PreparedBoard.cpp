#include "prepared/PreparedBoard.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <stdexcept>
#include <string>

#include "prepared/HeelDrawing.hpp"
#include "prepared/Once.hpp"

namespace sagitta {
namespace {

template <typename Thing>
std::vector<Thing> selected(const std::vector<Thing>& all, const Selection& selection) {
  std::vector<Thing> some;
  std::copy_if(all.begin(), all.end(), std::back_inserter(some),
               [&](const Thing& each) { return selection.has(id_of(each)); });
  return some;
}

std::vector<Pocket> selected(const std::vector<Pocket>& all, const Selection& selection) {
  std::vector<Pocket> some;
  std::copy_if(all.begin(), all.end(), std::back_inserter(some), [&](const Pocket& each) {
    return selection.has({.kind = FeatureId::Kind::inlay, .index = each.inlay, .fret = each.fret});
  });
  return some;
}

}  // namespace

struct PreparedBoard::Ground {
  Drawn drawn;
  std::shared_ptr<const FittedInlays> fitted;
  Outside outside;
};

struct PreparedBoard::Cuts {
  std::vector<Slot> slots;
  std::vector<Marker> markers;
  std::vector<SideDot> side_dots;
  std::vector<Pocket> pockets;
};

struct PreparedBoard::Stages {
  std::array<Once<std::variant<Plan, Faults>>, stage_count> plans;
  std::array<Once<Shell>, stage_count> shells;
};

PreparedBoard::PreparedBoard(Drawn drawn, std::shared_ptr<const FittedInlays> fitted, Outside outside)
    : ground_(std::make_shared<const Ground>(Ground{std::move(drawn), std::move(fitted), outside})),
      cuts_(std::make_shared<const Cuts>(Cuts{layout().slots, layout().markers, layout().side_dots, inlays().pockets})),
      pieces_(ground_, &inlays().pieces),
      stages_(std::make_shared<const Stages>()) {}

const Board& PreparedBoard::board() const { return ground_->drawn.board; }
const Board& PreparedBoard::planned() const { return ground_->drawn.planned; }
const Layout& PreparedBoard::layout() const { return ground_->drawn.layout; }
const Surface& PreparedBoard::surface() const { return ground_->drawn.surface; }
const Inlays& PreparedBoard::inlays() const { return ground_->fitted->inlays; }
const FittedInlays& PreparedBoard::fitted() const { return *ground_->fitted; }
Outside PreparedBoard::outside() const { return ground_->outside; }

const std::vector<Slot>& PreparedBoard::slots() const { return cuts_->slots; }
const std::vector<Marker>& PreparedBoard::markers() const { return cuts_->markers; }
const std::vector<SideDot>& PreparedBoard::side_dots() const { return cuts_->side_dots; }
const std::vector<Pocket>& PreparedBoard::pockets() const { return cuts_->pockets; }

std::vector<Feature> PreparedBoard::features(const WorkDone& done) const {
  std::vector<Feature> features = features_of(board(), layout(), surface(), inlays(), done);
  std::erase_if(features, [&](const Feature& feature) { return !selection_.has(feature.id); });
  return features;
}

std::variant<Plan, Faults> PreparedBoard::piece_plan(const InlayPiece& piece, PieceState state) const {
  return make_piece_plan(board(), layout(), surface(), piece, state, selection_);
}

const std::variant<Plan, Faults>& PreparedBoard::planned(Stage stage) const {
  return stages_->plans[static_cast<std::size_t>(stage)].get([&] {
    const WorkDone done = work_done_at(board(), stage);
    return plan_of(surface(), stock_top(board(), layout(), done), stage, done, features(done), board().units);
  });
}

Faults PreparedBoard::stage_faults() const {
  for (const Stage stage : stages_of(board()))
    if (const auto* faults = std::get_if<Faults>(&planned(stage))) return *faults;
  return {};
}

const Plan& PreparedBoard::plan(Stage stage) const {
  const Plan* plan = std::get_if<Plan>(&planned(stage));
  if (!plan) throw std::logic_error("the board has no plan of the stage " + std::string(name(stage)));
  return *plan;
}

const Shell& PreparedBoard::shell(Stage stage) const {
  return stages_->shells[static_cast<std::size_t>(stage)].get([&] { return lift(plan(stage)); });
}

std::shared_ptr<const Shell> PreparedBoard::kept_shell(Stage stage) const { return {stages_, &shell(stage)}; }

PreparedBoard PreparedBoard::only(const Selection& selection) const {
  PreparedBoard part = *this;
  part.selection_ = selection;
  part.pieces_ = selection.whole()
                     ? std::shared_ptr<const std::vector<InlayPiece>>(ground_, &inlays().pieces)
                     : std::make_shared<const std::vector<InlayPiece>>(selected(inlays().pieces, selection));
  if (selection.frets == selection_.frets) return part;
  part.cuts_ = std::make_shared<const Cuts>(
      Cuts{selected(layout().slots, selection), selected(layout().markers, selection),
           selected(layout().side_dots, selection), selected(inlays().pockets, selection)});
  part.stages_ = std::make_shared<const Stages>();
  return part;
}

PreparedBoard PreparedBoard::with_pieces(std::vector<InlayPiece> pieces) const {
  PreparedBoard other = *this;
  other.pieces_ = std::make_shared<const std::vector<InlayPiece>>(std::move(pieces));
  return other;
}

std::variant<PreparedBoard, Faults> prepare(Board board, Outside outside) {
  auto drawn = draw(std::move(board), outside);
  if (auto* faults = std::get_if<Faults>(&drawn)) return std::move(*faults);
  return prepare(std::get<Drawn>(std::move(drawn)), outside);
}

std::variant<PreparedBoard, Faults> prepare(Drawn drawn, Outside outside) {
  if (Faults faults = surface_faults(drawn); !faults.empty()) return faults;
  auto fitted = InlayFitter(outside).fit(drawn);
  if (!fitted->faults.empty()) return fitted->faults;
  return PreparedBoard(std::move(drawn), std::move(fitted), outside);
}

}  // namespace sagitta
