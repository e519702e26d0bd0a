#pragma once

/// The board's drawings while a drawing program works at them: seen to change, read again, and what is different told.

#include <map>
#include <optional>
#include <set>
#include <string>

#include "document/CopiedFiles.hpp"
#include "document/DrawingWatch.hpp"
#include "inlay/Inlays.hpp"
#include "widgets/LengthText.hpp"

namespace sagitta::viewer {

struct Desk;

/// What of a drawing can be told in words.
struct DrawingFacts {
  std::set<std::string> colours;
  std::size_t outlines = 0;
  Point size;  ///< along and across as drawn, mm
};
DrawingFacts facts_of(const Artwork& artwork);
/// "2 outlines more; #20a020 is new; 20 mm wide instead of 16 mm"; "outlines of another form" where only that differs.
std::string difference_words(const DrawingFacts& before, const DrawingFacts& now, const Manner& manner);

struct LiveDrawings {
  DrawingWatch watch;
  CopiedFiles copied;
  std::uint64_t followed = 0;                   ///< the document's revision that `copied` has followed
  std::map<std::string, DrawingFacts> changed;  ///< by file: before the change that is not told yet
};

/// Once a frame: looks at the drawings from time to time, and has the board made again when one was changed.
void watch_drawings(Desk& desk);
/// When a model has come in: says what is different in the drawings that were changed, or why one is refused.
void tell_changed_drawings(Desk& desk);
/// Once a frame: copies beside the board follow its steps of undo.
void follow_copies(Desk& desk);

/// The first inlay whose colours and its drawing's are not the same any more.
std::optional<std::size_t> inlay_to_reconcile(const Desk& desk);

/// Brings the button into view that mends them, with the keyboard on it.
void lead_to_colours(Desk& desk);
/// Lets another drawing be chosen for the first inlay whose drawing cannot be read.
void replace_unreadable(Desk& desk);

}  // namespace sagitta::viewer
