#include "document/Document.hpp"

#include <utility>

#include "folder/Digest.hpp"

namespace sagitta::viewer {

void Document::adopt(Board board, std::string text, std::filesystem::path path) {
  Board saved = board;
  adopt_unsaved(std::move(board), std::move(saved), std::move(text), std::move(path));
}

void Document::adopt_unsaved(Board board, Board saved, std::string text, std::filesystem::path path) {
  board_ = std::move(board);
  settled_ = board_;
  saved_ = std::move(saved);
  text_ = std::move(text);
  path_ = std::move(path);
  checksum_ = path_.empty() ? "" : sha256(text_);
  past_.clear(), future_.clear();
  unkept_ = false;
  ++revision_;
}

std::string Document::title() const {
  if (!path_.empty()) return path_.filename().string();
  return board_.name.empty() ? "Unnamed board" : board_.name;
}

void Document::preview(Board board) {
  if (board == board_) return;
  board_ = std::move(board);
  ++revision_;
}

void Document::commit(const std::string& what) {
  if (board_ == settled_) return;
  past_.push_back({std::move(settled_), what});
  future_.clear();
  settled_ = board_;
}

void Document::abandon() {
  if (board_ == settled_) return;
  board_ = settled_;
  ++revision_;
}

void Document::change(Board board, const std::string& what) {
  preview(std::move(board));
  commit(what);
}

void Document::take(Board draft, Edit how, const std::string& what) {
  switch (how) {
    case Edit::none:
      return;
    case Edit::moving:
      return preview(std::move(draft));
    case Edit::given_up:
      return abandon();
    case Edit::done:
      return change(std::move(draft), what);
  }
}

void Document::undo() {
  abandon();
  if (past_.empty()) return;
  Step step = std::move(past_.back());
  past_.pop_back();
  future_.push_back({std::move(board_), step.what});
  board_ = std::move(step.board);
  settled_ = board_;
  ++revision_;
}

void Document::redo() {
  abandon();
  if (future_.empty()) return;
  Step step = std::move(future_.back());
  future_.pop_back();
  past_.push_back({std::move(board_), step.what});
  board_ = std::move(step.board);
  settled_ = board_;
  ++revision_;
}

void Document::stand_on(Board saved, std::string text) {
  saved_ = std::move(saved);
  text_ = std::move(text);
  checksum_ = sha256(text_);
  unkept_ = false;
}

void Document::revert() { change(saved_, "Revert to the saved board"); }

void Document::moved_to(const std::string& folder) {
  if (board_.folder != folder) ++revision_;
  board_.folder = settled_.folder = saved_.folder = folder;
  for (auto* steps : {&past_, &future_})
    for (Step& step : *steps) step.board.folder = folder;
}

void Document::kept(std::filesystem::path path, std::string text, const std::string& folder) {
  moved_to(folder);
  saved_ = board_;
  unkept_ = false;
  text_ = std::move(text);
  path_ = std::move(path);
  checksum_ = sha256(text_);
}

}  // namespace sagitta::viewer
