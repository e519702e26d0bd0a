#pragma once

/// The document: the board, where it is kept, whether it differs from what is there, and every step back to the
/// beginning. All that is saved; nothing about how it is looked at.

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "board/Board.hpp"

namespace sagitta::viewer {

/// How far a hand is with a change of the board.
enum class Edit { none, moving, done, given_up };

class Document {
 public:
  /// A board with the text it was read from ("" when it has none yet) and its place ("" when it is nowhere yet).
  void adopt(Board board, std::string text, std::filesystem::path path);
  /// As adopt, but differing from what is on disk: a recovered board.
  void adopt_unsaved(Board board, Board saved, std::string text, std::filesystem::path path);
  /// The file had another checksum when the board was read from it than its text has: a recovered board whose file was
  /// changed meanwhile.
  void knew(std::string checksum) { checksum_ = std::move(checksum); }
  /// Somebody else changed the file: from now on the document differs from that version. The board stays.
  void stand_on(Board saved, std::string text);

  const Board& board() const { return board_; }
  const Board& saved() const { return saved_; }
  const std::string& text() const { return text_; }
  const std::filesystem::path& path() const { return path_; }
  /// SHA-256 of the file's bytes as they were last read or written here; "" without a file.
  const std::string& checksum() const { return checksum_; }
  /// The file's name, or what an unnamed board is called.
  std::string title() const;
  bool dirty() const { return unkept_ || !(board_ == saved_); }
  /// The board is nowhere on disk although nobody has changed it here: recovered, say.
  void mark_unkept() { unkept_ = true; }
  /// Grows with every change of the board, however it came about.
  std::uint64_t revision() const { return revision_; }

  /// The board while a hand is still moving: shown, not yet a step.
  void preview(Board board);
  /// Makes one step of everything since the last one. Does nothing when nothing changed.
  void commit(const std::string& what);
  /// Takes back what was only previewed.
  void abandon();
  bool previewing() const { return !(board_ == settled_); }
  void change(Board board, const std::string& what);
  /// Takes an edited draft: shown at once, one step of undo when the hand is done.
  void take(Board draft, Edit how, const std::string& what);

  bool can_undo() const { return !past_.empty(); }
  bool can_redo() const { return !future_.empty(); }
  std::string undo_name() const { return past_.empty() ? "" : past_.back().what; }
  std::string redo_name() const { return future_.empty() ? "" : future_.back().what; }
  std::size_t steps() const { return past_.size(); }
  void undo();
  void redo();
  /// Back to what is on disk, as a step that can itself be undone.
  void revert();
  /// Its files lie in another folder from now on: relative paths start there, those of all steps too.
  void moved_to(const std::string& folder);
  /// The board has been written to `path` as `text`; its relative paths start from `folder` from now on.
  void kept(std::filesystem::path path, std::string text, const std::string& folder);

 private:
  struct Step {
    Board board;
    std::string what;
  };
  Board board_, settled_, saved_;
  std::string text_;
  std::filesystem::path path_;
  std::string checksum_;
  std::vector<Step> past_, future_;
  std::uint64_t revision_ = 0;
  bool unkept_ = false;
};

}  // namespace sagitta::viewer
