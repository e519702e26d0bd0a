#include "app/ChangedElsewhere.hpp"

#include "document/FileStamp.hpp"
#include "document/OnDisk.hpp"

namespace sagitta::viewer {

namespace {

constexpr double between_looks = 1;  ///< seconds

void open_choice(Desk& desk, OnDisk disk) {
  const std::filesystem::path& path = desk.document.path();
  BoardFile file = read_board_text(disk.text, path.string(), path.parent_path().string());
  desk.versions.elsewhere = Elsewhere{std::move(disk.text), std::move(disk.checksum), std::move(file)};
  desk.view.dialog = Dialog::elsewhere;
}

}  // namespace

void watch_file(Desk& desk) {
  if (desk.ui.now() < desk.versions.watch.next || desk.view.dialog != Dialog::none || desk.document.previewing())
    return;
  desk.versions.watch.next = desk.ui.now() + between_looks;
  std::string stamp = desk.document.path().string() + " " + stamp_of(desk.document.path());
  if (stamp == desk.versions.watch.stamp) return;
  desk.versions.watch.stamp = std::move(stamp);
  OnDisk disk = look_on_disk(desk.document);
  if (disk.kind == OnDisk::Kind::changed && disk.checksum != desk.versions.watch.put_off)
    open_choice(desk, std::move(disk));
}

bool is_changed_elsewhere(Desk& desk) {
  OnDisk disk = look_on_disk(desk.document);
  if (disk.kind != OnDisk::Kind::changed) return false;
  open_choice(desk, std::move(disk));
  return true;
}

}  // namespace sagitta::viewer
