#include "app/DiskLook.hpp"

#include <algorithm>

#include "app/ChangedElsewhere.hpp"
#include "document/Beside.hpp"

namespace sagitta::viewer {

double next_look(const Desk& desk) {
  constexpr double never = 1e300;
  if (desk.document.previewing()) return never;  // a hand is at it: the look waits until it lets go
  const bool file = !desk.document.path().empty() && desk.view.dialog == Dialog::none;
  const bool drawings = !drawings_of(desk.document.board()).empty();
  return std::min(file ? desk.versions.watch.next : never, drawings ? desk.drawings.watch.next() : never);
}

bool look_at_disk(Desk& desk) {
  const std::uint64_t reading = desk.results.reading;
  const Dialog dialog = desk.view.dialog;
  watch_file(desk);
  watch_drawings(desk);
  return desk.view.dialog != dialog || desk.results.reading != reading;
}

}  // namespace sagitta::viewer
