#include "app/LiveDrawings.hpp"

#include <algorithm>

#include "app/Desk.hpp"
#include "artwork/ReadArtwork.hpp"
#include "decisions/ArtworkRows.hpp"
#include "decisions/Decisions.hpp"
#include "document/Beside.hpp"
#include "inlay/Flatten.hpp"

namespace sagitta::viewer {

namespace {

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text;
}

std::string counted(std::size_t n, const std::string& more) {
  return std::to_string(n) + (n == 1 ? " outline " : " outlines ") + more;
}

std::vector<std::string> missing_in(const std::set<std::string>& from, const std::set<std::string>& in) {
  std::vector<std::string> words;
  std::set_difference(from.begin(), from.end(), in.begin(), in.end(), std::back_inserter(words));
  return words;
}

/// The drawing as the newest model has it; null where it could not be read.
const Artwork* drawing_in(const Results& results, const std::string& file) {
  if (!results.model || !results.model->fitted) return nullptr;
  const auto& drawings = results.model->fitted->drawings;
  const auto found = drawings.find(file);
  return found == drawings.end() ? nullptr : &found->second;
}

/// A drawing of the heel end, which no inlay and no cut is made from, has no facts.
bool has_facts(const Board& board, const std::string& file) {
  return std::any_of(board.inlays.begin(), board.inlays.end(), [&](const Inlay& i) { return i.file == file; }) ||
         std::any_of(board.cuts.begin(), board.cuts.end(), [&](const Cut& c) { return c.file == file; });
}

void tell(Desk& desk, const std::string& file, const DrawingFacts& before) {
  const Model& model = *desk.results.model;
  const Artwork* now = drawing_in(desk.results, file);
  if (!now && (has_facts(model.board, file) || !model.faults.empty())) {
    const std::string why = model.faults.empty() ? model.trouble : model.faults.front().message;
    return desk.view.fail(file + " was changed and cannot be used as it is: " + why + ".", "Choose another drawing",
                          "replace drawing");
  }
  const std::string what = now ? ": " + difference_words(before, facts_of(*now), desk.manner()) : "";
  if (inlay_to_reconcile(desk))
    return desk.view.fail(file + " was changed" + what + ". Its colours and the materials do not match any more.",
                          "Go to its colours", "drawing colours");
  desk.view.say(file + " was changed, and the board is made from it as it is now" + what + ".");
}

}  // namespace

DrawingFacts facts_of(const Artwork& artwork) {
  DrawingFacts facts;
  for (const DrawnRegion& region : artwork.regions) {
    facts.colours.insert(region.colour);
    facts.outlines += region.outlines.size();
  }
  if (artwork.regions.empty()) return facts;
  const Box box = bounds(artwork);
  facts.size = box.high - box.low;
  return facts;
}

std::string difference_words(const DrawingFacts& before, const DrawingFacts& now, const Manner& manner) {
  constexpr double same_size = 0.005;  // mm: what is shown is the same then
  std::vector<std::string> parts;
  if (now.outlines > before.outlines) parts.push_back(counted(now.outlines - before.outlines, "more"));
  if (now.outlines < before.outlines) parts.push_back(counted(before.outlines - now.outlines, "fewer"));
  for (const std::string& colour : missing_in(now.colours, before.colours)) parts.push_back(colour + " is new");
  for (const std::string& colour : missing_in(before.colours, now.colours)) parts.push_back(colour + " is gone");
  const auto side = [&](double was, double is, const char* word) {
    if (std::abs(was - is) > same_size)
      parts.push_back("drawn " + shown(is, manner, 2) + " " + word + " instead of " + shown(was, manner, 2));
  };
  side(before.size.x, now.size.x, "wide"), side(before.size.y, now.size.y, "high");
  return parts.empty() ? "outlines of another form" : joined(parts);
}

void watch_drawings(Desk& desk) {
  if (desk.document.previewing()) return;
  const std::vector<std::string> files = desk.drawings.watch.changed(desk.document.board(), desk.ui.now());
  for (const std::string& file : files) {
    const Artwork* before = drawing_in(desk.results, file);
    desk.drawings.changed.try_emplace(file, before ? facts_of(*before) : DrawingFacts());
  }
  if (!files.empty()) ++desk.results.reading;
}

void tell_changed_drawings(Desk& desk) {
  const Model* model = desk.results.model.get();
  if (desk.drawings.changed.empty() || !model || model->reading != desk.results.reading) return;
  const auto changed = std::exchange(desk.drawings.changed, {});
  const std::vector<std::string> named = drawings_of(model->board);
  for (const auto& [file, before] : changed)
    if (std::find(named.begin(), named.end(), file) != named.end()) tell(desk, file, before);
}

void follow_copies(Desk& desk) {
  if (desk.document.previewing() || desk.drawings.followed == desk.document.revision()) return;
  desk.drawings.followed = desk.document.revision();
  if (const std::string why = desk.drawings.copied.follow(desk.document); !why.empty()) desk.view.fail(why);
}

std::optional<std::size_t> inlay_to_reconcile(const Desk& desk) {
  const Board& board = desk.document.board();
  for (std::size_t i = 0; i < board.inlays.size(); ++i)
    if (!mending_button(desk.results, board, i).empty()) return i;
  return std::nullopt;
}

void lead_to_colours(Desk& desk) {
  const auto inlay = inlay_to_reconcile(desk);
  if (!inlay) return;
  desk.view.decision = group_of_key("inlays.frets");
  desk.view.narrow_shows_checks = false;
  desk.ui.focus_on("Decisions/" + mending_button(desk.results, desk.document.board(), *inlay));
}

void replace_unreadable(Desk& desk) {
  const Board& board = desk.document.board();
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    if (board.inlays[i].file.empty()) continue;
    const auto read = read_artwork((std::filesystem::path(board.folder) / board.inlays[i].file).string());
    if (!std::holds_alternative<Faults>(read)) continue;
    desk.forms.placing = static_cast<int>(i);
    desk.view.dialog = Dialog::drawing;
    return;
  }
  desk.view.say("Every drawing of the board can be read.");
}

}  // namespace sagitta::viewer
