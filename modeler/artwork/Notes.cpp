#include "artwork/Notes.hpp"

#include "board/Length.hpp"

namespace sagitta {

void Notes::add(const std::string& where, const std::string& what, const std::string& hint) {
  // as many kinds as a builder would read; the rest are more of the same
  constexpr std::size_t most_kinds = 200;
  for (Note& note : notes_)
    if (note.what == what) {
      ++note.count;
      return;
    }
  if (notes_.size() < most_kinds) notes_.push_back({where, what, hint});
}

std::string Notes::length(double mm) const { return shown_length(mm, units_, units_ == Units::inch ? 4 : 2); }

Faults Notes::faults() const {
  Faults all;
  for (const Note& note : notes_) {
    const std::string more = note.count > 1 ? " (and " + std::to_string(note.count - 1) + " more)" : "";
    all.push_back({FaultCode::left_out, "",
                   note.where + more + (note.where.empty() && more.empty() ? "" : ": ") + note.what, note.hint});
  }
  return all;
}

}  // namespace sagitta
