#include "app/ChangedElsewhere.hpp"

#include <sys/stat.h>

#include "document/OnDisk.hpp"

namespace sagitta::viewer {

namespace {

constexpr double between_looks = 1;  ///< seconds

/// Size, number and times of the file; "" when it is not there.
std::string stamp_of(const std::filesystem::path& path) {
  struct stat found {};
  if (path.empty() || ::stat(path.c_str(), &found) != 0) return "";
  const auto time = [](const timespec& t) { return std::to_string(t.tv_sec) + "." + std::to_string(t.tv_nsec); };
  return std::to_string(found.st_ino) + " " + std::to_string(found.st_size) + " " + time(found.st_mtim) + " " +
         time(found.st_ctim);
}

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
