#include "drawing/JobPart.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>

#include "board/Length.hpp"
#include "drawing/RefitDrawn.hpp"
#include "layout/LastFret.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Work.hpp"

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

void judge_frets(const Board& board, const std::set<int>& frets) {
  if (!frets.empty() && *frets.rbegin() > fret_count(board))
    throw PartError("--frets " + words_of(frets) + ": the board has " + std::to_string(fret_count(board)) + " frets");
}

/// The named among the pieces that are selected so far.
std::set<FeatureId> pieces_named(const std::set<std::string>& names, const std::vector<InlayPiece>& pieces) {
  std::set<FeatureId> ids;
  for (const std::string& wanted : names) {
    const auto found =
        std::find_if(pieces.begin(), pieces.end(), [&](const InlayPiece& piece) { return piece.name == wanted; });
    const std::string range =
        pieces.empty() ? "it has no pieces" : "they run from " + pieces.front().name + " to " + pieces.back().name;
    if (found == pieces.end())
      throw PartError("--pieces " + wanted + ": the board has no such piece; " + range + ", see pieces.csv");
    ids.insert(id_of(*found));
  }
  return ids;
}

/// The pockets are cut already: a piece with less room grows, one with more shrinks.
std::vector<InlayPiece> cut_anew(const PreparedBoard& part, double clearance) {
  std::vector<InlayPiece> pieces = part.pieces();
  std::vector<InlayPiece*> drawn;
  for (InlayPiece& piece : pieces) {
    const Inlay& inlay = part.board().inlays[static_cast<std::size_t>(piece.inlay)];
    if (!piece.shape) {
      drawn.push_back(&piece);
      continue;
    }
    piece.shape = shrunk(*piece.shape, clearance - inlay.clearance);
    if (piece.shape->empty()) throw PartError("--clearance: nothing is left of " + piece.name);
    piece.piece = {outline(*piece.shape)};
  }
  if (const std::string lost = refit_drawn(part.board(), drawn, clearance); !lost.empty())
    throw PartError("--clearance: with " + shown_length(clearance, Units::mm) + " nothing whole is left of " + lost);
  return pieces;
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
  for (const Operation each : {Operation::thickness, Operation::pockets, Operation::inlay, Operation::radius,
                               Operation::slots, Operation::outline})
    if (operation_name(each) == name) return each;
  throw PartError("--operation " + name +
                  ": there is no such operation; choose from thickness, pockets, inlay, radius, slots and outline");
}

PreparedBoard part_of(const PreparedBoard& whole, const JobPart& part) {
  if (part.whole()) return whole;
  judge_frets(whole.board(), part.frets);
  if (part.operation == Operation::thickness && !has_thickness(whole.board()))
    throw PartError("--operation thickness: the board's order of work does not begin with it");
  Selection selection{part.frets, {}, part.operation};
  PreparedBoard chosen = whole.only(selection);
  if (!part.frets.empty())
    if (const Faults faults = chosen.stage_faults(); !faults.empty())
      throw PartError("--frets " + words_of(part.frets) + ": " + faults.front().message);
  if (part.pieces.empty()) return chosen;
  selection.pieces = pieces_named(part.pieces, chosen.pieces());
  chosen = chosen.only(selection);
  return part.clearance ? chosen.with_pieces(cut_anew(chosen, *part.clearance)) : chosen;
}

}  // namespace sagitta
