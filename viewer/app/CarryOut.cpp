#include "app/CarryOut.hpp"

#include <utility>

#include "app/Commands.hpp"
#include "app/Drawings.hpp"
#include "app/Files.hpp"
#include "app/Versions.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "jobs/OtherProgram.hpp"

namespace sagitta::viewer {

namespace {

/// One function a request.
struct Doing {
  Desk& desk;

  void operator()(const asked::Run& run) const {
    const Command* command = command_named(run.command);
    if (command && (!command->can || command->can(desk))) command->run(desk);
  }
  void operator()(const asked::Show& show) const { desk.view.dialog = show.dialog; }
  void operator()(const asked::ShowKey& show) const { lead_to_key(desk.ui, desk.view, desk.forms.rows, show.key); }
  void operator()(const asked::Quit&) const { desk.quit = true; }

  void operator()(const asked::OpenBoard& open) const { open_board(desk, open.file); }
  void operator()(const asked::OpenPreset& open) const { open_preset(desk, open.name); }
  void operator()(const asked::CompareWith& compare) const { compare_with(desk, compare.file); }
  void operator()(const asked::SaveAs& save) const {
    Browsing& browsing = desk.forms.browsing;
    if (save_board_as(desk, save.file)) {
      browsing = {};
      desk.view.dialog = Dialog::none;
      return go_on(desk);
    }
    if (desk.view.dialog != Dialog::save_as) {
      browsing = {};  // the file was changed elsewhere: that is to be settled first
    } else if (desk.view.failure) {
      browsing.message = desk.view.failure->words;  // read where the name is typed
      desk.view.failure.reset();
    } else {
      browsing.message = desk.view.message;
    }
  }

  void operator()(const asked::ChooseDrawing& choose) const {
    desk.forms.placing = choose.inlay;
    desk.view.dialog = Dialog::drawing;
  }
  void operator()(const asked::PlaceDrawing& place) const { place_drawing(desk, place.file); }

  void operator()(const asked::Continue& next) const {
    if (next.save_first && !save_board(desk)) return;
    desk.view.dialog = Dialog::none;
    go_on(desk);
  }
  void operator()(const asked::Stay&) const {
    desk.view.dialog = Dialog::none;
    desk.after_settling.reset();
  }
  void operator()(const asked::LeftOver& left) const {
    desk.view.dialog = Dialog::none;
    if (left.take) return take_left_over(desk);
    drop_left_over(desk);
  }
  void operator()(const asked::Resolve& resolve) const {
    using How = asked::Resolve::How;
    switch (resolve.how) {
      case How::take_theirs:
        return take_theirs(desk);
      case How::keep_mine:
        return keep_mine(desk);
      case How::keep_both:
        return keep_both(desk);
      case How::put_off:
        return put_off(desk);
    }
  }

  void operator()(const asked::Export& send) const { desk.sending.start(send.order, desk.wake); }
  void operator()(const asked::StopExport&) const { desk.sending.cancel(); }
  void operator()(const asked::OpenFolder& open) const {
    if (const std::string why = show_folder(open.folder); !why.empty()) desk.view.fail(why);
  }
  void operator()(const asked::ForgetExport&) const { desk.sending.forget(); }
  void operator()(const asked::Print& print) const {
    desk.paperwork.want(print.model->board, print.paper, print.trial, desk.wake);
  }
  void operator()(const asked::SendToPrinter& print) const {
    const auto document = print.pages->documents.find(print.document);
    if (document == print.pages->documents.end()) return;
    desk.forms.sending.printed = {};
    desk.printing.start({document->first, document->second, print.paper, state_of(desk)}, desk.wake);
  }
  void operator()(const asked::CompareInDetail& two) const { desk.comparing.want({two.there, two.here}, desk.wake); }
  void operator()(const asked::SavePicture& save) const { desk.picture_wanted = save.file; }
  void operator()(const asked::FindWays& find) const { desk.rescue.want(find.board, desk.wake); }
};

}  // namespace

bool carry_out_asked(Desk& desk) {
  bool shows = false;
  while (!desk.asked.empty())
    for (const Request& request : std::exchange(desk.asked, {})) {
      std::visit(Doing{desk}, request);
      // A page asks for its print and its ways in every frame; the background wakes the window when there is something
      // new.
      const bool again = std::holds_alternative<asked::Print>(request) ||
                         std::holds_alternative<asked::FindWays>(request) ||
                         std::holds_alternative<asked::CompareInDetail>(request);
      shows = shows || !again;
    }
  return shows;
}

}  // namespace sagitta::viewer
