#include "export/JobPart.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>

#include "export/ReadyBoard.hpp"
#include "export/RefitDrawn.hpp"
#include "export/SetUp.hpp"
#include "findings/Work.hpp"
#include "layout/Measure.hpp"

namespace sagitta {
namespace {

int number_in(std::string_view word, const std::string& all) {
  int number = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), number);
  if (error != std::errc{} || end != word.data() + word.size() || number < 0)
    throw PartError("--frets " + all + ": \"" + std::string(word) +
                    "\" is no fret; write numbers and ranges, as 1,3,9-22");
  return number;
}

void add_range(std::string_view word, const std::string& all, std::set<int>& frets) {
  const std::size_t dash = word.find('-');
  const int first = number_in(word.substr(0, dash), all);
  const int last = dash == std::string_view::npos ? first : number_in(word.substr(dash + 1), all);
  if (last < first) throw PartError("--frets " + all + ": a range runs from the lower fret to the higher, as 9-22");
  constexpr int most = 1000;  // more than any board has
  for (int fret = first; fret <= std::min(last, most); ++fret) frets.insert(fret);
}

void keep_frets(ReadyBoard& ready, const std::set<int>& frets) {
  const int last = ready.board().scale.frets;
  if (*frets.rbegin() > last)
    throw PartError("--frets " + words_of(frets) + ": the board has " + std::to_string(last) + " frets");
  const auto other = [&](const auto& feature) { return frets.count(feature.fret) == 0; };
  std::erase_if(ready.layout.slots, other);
  std::erase_if(ready.layout.markers, other);
  std::erase_if(ready.layout.side_dots, other);
  std::erase_if(ready.inlays.pieces, other);
  std::erase_if(ready.inlays.pockets, other);
  for (Plan& plan : ready.plans) {
    auto made = make_plan(ready.board(), ready.layout, ready.surface, ready.inlays, plan.stage);
    if (const auto* faults = std::get_if<Faults>(&made))
      throw PartError("--frets " + words_of(frets) + ": " + faults->front().message);
    plan = std::get<Plan>(std::move(made));
  }
}

/// Set-ups without it keep their place in the list, with nothing to do.
void keep_operation(Board& board, Operation operation) {
  if (board.setups.empty()) board.setups.push_back(whole_job(board));
  for (Setup& setup : board.setups) {
    const bool has = std::find(setup.operations.begin(), setup.operations.end(), operation) != setup.operations.end();
    setup.operations.clear();
    if (has) setup.operations.push_back(operation);
  }
}

void keep_pieces(ReadyBoard& ready, const std::set<std::string>& names) {
  std::vector<InlayPiece>& pieces = ready.inlays.pieces;
  for (const std::string& wanted : names) {
    const auto is_it = [&](const InlayPiece& piece) { return piece.name == wanted; };
    if (std::any_of(pieces.begin(), pieces.end(), is_it)) continue;
    const std::string range =
        pieces.empty() ? "it has no pieces" : "they run from " + pieces.front().name + " to " + pieces.back().name;
    throw PartError("--pieces " + wanted + ": the board has no such piece; " + range + ", see pieces.csv");
  }
  std::erase_if(pieces, [&](const InlayPiece& piece) { return names.count(piece.name) == 0; });
}

/// The pockets are cut already: a piece with less room grows, one with more shrinks.
void refit_pieces(ReadyBoard& ready, double clearance) {
  std::vector<InlayPiece*> drawn;
  for (InlayPiece& piece : ready.inlays.pieces) {
    const Inlay& inlay = ready.board().inlays[static_cast<std::size_t>(piece.inlay)];
    if (!piece.shape) {
      drawn.push_back(&piece);
      continue;
    }
    piece.shape = shrunk(*piece.shape, clearance - inlay.clearance);
    if (piece.shape->empty()) throw PartError("--clearance: nothing is left of " + piece.name);
    piece.piece = {outline(*piece.shape)};
  }
  if (const std::string lost = refit_drawn(ready.board(), drawn, clearance); !lost.empty())
    throw PartError("--clearance: with " + in_mm(clearance) + " nothing whole is left of " + lost);
}

}  // namespace

std::set<int> frets_in(const std::string& words) {
  std::set<int> frets;
  for (std::size_t from = 0; from <= words.size();) {
    const std::size_t comma = std::min(words.find(',', from), words.size());
    add_range(std::string_view(words).substr(from, comma - from), words, frets);
    from = comma + 1;
  }
  return frets;
}

std::string words_of(const std::set<int>& frets) {
  std::string words;
  for (auto first = frets.begin(); first != frets.end();) {
    auto last = first;
    while (std::next(last) != frets.end() && *std::next(last) == *last + 1) ++last;
    words += (words.empty() ? "" : ",") + std::to_string(*first);
    if (last != first) words += "-" + std::to_string(*last);
    first = std::next(last);
  }
  return words;
}

std::string words_of(const JobPart& part) {
  std::string words;
  const auto add = [&](const std::string& what) { words += (words.empty() ? "only " : ", only ") + what; };
  if (!part.frets.empty()) add("frets " + words_of(part.frets));
  for (const std::string& piece : part.pieces) add(piece);
  if (part.operation) add(std::string(operation_name(*part.operation)));
  return words;
}

Operation operation_named(const std::string& name) {
  for (const Operation each :
       {Operation::pockets, Operation::inlay, Operation::radius, Operation::slots, Operation::outline})
    if (operation_name(each) == name) return each;
  throw PartError("--operation " + name +
                  ": there is no such operation; choose from pockets, inlay, radius, slots and outline");
}

ReadyBoard part_of(ReadyBoard ready, const JobPart& part) {
  if (!part.frets.empty()) keep_frets(ready, part.frets);
  if (!part.pieces.empty()) keep_pieces(ready, part.pieces);
  if (part.clearance) refit_pieces(ready, *part.clearance);
  if (part.operation) keep_operation(ready.file.board, *part.operation);
  return ready;
}

}  // namespace sagitta
