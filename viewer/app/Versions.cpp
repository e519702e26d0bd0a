#include "app/Versions.hpp"

#include "app/Files.hpp"
#include "document/OnDisk.hpp"

namespace sagitta::viewer {

namespace {

void settle(Desk& desk) {
  desk.versions.elsewhere.reset();
  desk.view.dialog = Dialog::none;
  if (desk.document.dirty())
    desk.after_settling.reset();
  else
    go_on(desk);
}

}  // namespace

void take_theirs(Desk& desk) {
  if (!desk.versions.elsewhere || !desk.versions.elsewhere->file.sound()) return;
  Elsewhere theirs = std::move(*desk.versions.elsewhere);
  desk.forms.rows.forget();
  desk.document.stand_on(theirs.file.board, std::move(theirs.text));
  desk.document.change(std::move(theirs.file.board), "Take the file's version");
  desk.view.say("The board is as the file has it now; Undo brings yours back.");
  settle(desk);
}

void keep_mine(Desk& desk) {
  if (!desk.versions.elsewhere) return;
  // A version with problems says nothing about which values were meant: this document's own text is written.
  if (desk.versions.elsewhere->file.sound())
    desk.document.stand_on(desk.versions.elsewhere->file.board, desk.versions.elsewhere->text);
  else
    desk.document.knew(desk.versions.elsewhere->checksum);
  if (save_board(desk)) settle(desk);
}

void keep_both(Desk& desk) {
  if (save_board_as(desk, free_name(desk.document.path()))) settle(desk);
}

void put_off(Desk& desk) {
  if (desk.versions.elsewhere) desk.versions.watch.put_off = desk.versions.elsewhere->checksum;
  desk.versions.elsewhere.reset();
  desk.after_settling.reset();
  desk.view.dialog = Dialog::none;
}

}  // namespace sagitta::viewer
