#pragma once

/// What a hand asked a panel for that the panel does not do itself. Panels return it as a value; the app carries it out
/// once all panels are drawn.

#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "jobs/Model.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Sending.hpp"
#include "view/View.hpp"

namespace sagitta::viewer {

namespace asked {

/// A command by its name: "undo".
struct Run {
  std::string command;
};
struct Show {
  Dialog dialog = Dialog::none;
};
struct Quit {};
struct OpenBoard {
  std::filesystem::path file;
};
struct OpenPreset {
  std::string name;
};
struct SaveAs {
  std::filesystem::path file;
};
struct CompareWith {
  std::filesystem::path file;
};
/// The dialog that lets a drawing be chosen for an inlay, by its index; one past the last: a new inlay.
struct ChooseDrawing {
  int inlay = 0;
};
struct PlaceDrawing {
  std::filesystem::path file;
};
/// The row of a key, among the decisions, ready to be typed over.
struct ShowKey {
  std::string key;
};
/// What was to follow once unsaved changes are settled.
struct Continue {
  bool save_first = false;  ///< else the changes are thrown away
};
/// Nothing follows: the board stays as it is.
struct Stay {};
/// The copy that an earlier session left.
struct LeftOver {
  bool take = false;  ///< else it is thrown away
};
/// The document's file was changed by another program.
struct Resolve {
  enum class How { take_theirs, keep_mine, keep_both, put_off } how = How::put_off;
};
struct Export {
  SendingOrder order;
};
struct StopExport {};
/// A folder shown in the desktop's file manager.
struct OpenFolder {
  std::filesystem::path folder;
};
/// The outcome has been read.
struct ForgetExport {};
/// The pages of this model's board as they will print.
struct Print {
  ModelPtr model;
  std::string paper;
  bool trial = false;
};

/// A document of these pages, on paper.
struct SendToPrinter {
  std::shared_ptr<const PrintedPages> pages;
  std::string document;
  std::string paper;
};
/// What differs between the board and the one that it is compared with, and what each difference does to the wood.
struct CompareInDetail {
  ModelPtr here, there;
};
/// The board's picture as it is seen, as a PNG file.
struct SavePicture {
  std::filesystem::path file;
};
/// The ways out of what was measured on this board.
struct FindWays {
  Board board;
};

}  // namespace asked

using Request = std::variant<asked::Run, asked::Show, asked::ShowKey, asked::Quit, asked::OpenBoard, asked::OpenPreset,
                             asked::SaveAs, asked::CompareWith, asked::ChooseDrawing, asked::PlaceDrawing,
                             asked::Continue, asked::Stay, asked::LeftOver, asked::Resolve, asked::Export,
                             asked::StopExport, asked::OpenFolder, asked::ForgetExport, asked::Print,
                             asked::SendToPrinter, asked::CompareInDetail, asked::SavePicture, asked::FindWays>;
using Requests = std::vector<Request>;

}  // namespace sagitta::viewer
