#include "app/Elsewhere.hpp"

#include <sys/stat.h>

#include "app/Files.hpp"
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
  desk.elsewhere = Elsewhere{std::move(disk.text), std::move(disk.checksum), std::move(file)};
  desk.view.dialog = Dialog::elsewhere;
}

/// What was to follow once the board is settled: opening another one, say.
void go_on(Desk& desk) {
  desk.elsewhere.reset();
  desk.view.dialog = Dialog::none;
  const auto next = std::exchange(desk.after_unsaved, nullptr);
  if (next && !desk.document.dirty()) next(desk);
}

}  // namespace

void watch_file(Desk& desk) {
  if (desk.now < desk.watch.next || desk.view.dialog != Dialog::none || desk.document.previewing()) return;
  desk.watch.next = desk.now + between_looks;
  std::string stamp = desk.document.path().string() + " " + stamp_of(desk.document.path());
  if (stamp == desk.watch.stamp) return;
  desk.watch.stamp = std::move(stamp);
  OnDisk disk = look_on_disk(desk.document);
  if (disk.kind == OnDisk::Kind::changed && disk.checksum != desk.watch.put_off) open_choice(desk, std::move(disk));
}

bool is_changed_elsewhere(Desk& desk) {
  OnDisk disk = look_on_disk(desk.document);
  if (disk.kind != OnDisk::Kind::changed) return false;
  open_choice(desk, std::move(disk));
  return true;
}

void take_theirs(Desk& desk) {
  if (!desk.elsewhere || !desk.elsewhere->file.sound()) return;
  Elsewhere theirs = std::move(*desk.elsewhere);
  desk.rows.forget();
  desk.document.stand_on(theirs.file.board, std::move(theirs.text));
  desk.document.change(std::move(theirs.file.board), "Take the file's version");
  desk.say("The board is as the file has it now; Undo brings yours back.");
  go_on(desk);
}

void keep_mine(Desk& desk) {
  if (!desk.elsewhere) return;
  // A version with problems says nothing about which values were meant: this document's own text is written.
  if (desk.elsewhere->file.sound())
    desk.document.stand_on(desk.elsewhere->file.board, desk.elsewhere->text);
  else
    desk.document.knew(desk.elsewhere->checksum);
  if (save_board(desk)) go_on(desk);
}

void keep_both(Desk& desk) {
  if (save_board_as(desk, free_name(desk.document.path()))) go_on(desk);
}

void put_off(Desk& desk) {
  if (desk.elsewhere) desk.watch.put_off = desk.elsewhere->checksum;
  desk.elsewhere.reset();
  desk.after_unsaved = nullptr;
  desk.view.dialog = Dialog::none;
}

}  // namespace sagitta::viewer
