#pragma once

/// One decision as a row: its name on the left, its value on the right, dragged or typed. Driven by the field table.

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "board/Fields.hpp"
#include "document/Document.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Rows share what is half typed: one field at a time takes text, and refused texts stay beside their fields.
class FieldRows {
 public:
  Manner manner;
  std::string (*in_words)(std::string) = nullptr;  ///< gives keys in a text the names that they have in the window

  /// Draws the row of `key` ("inlays[2].depth"); `usual` is the value in force when none is given. Changes `row` of the
  /// draft and says how far the edit is.
  Edit draw(Ui& ui, const Field& field, const std::string& key, const std::string& label, const Row& row,
            std::optional<double> usual = std::nullopt);

  /// The key that a hand was last on.
  const std::string& in_hand() const { return in_hand_; }
  void take_in_hand(const std::string& key) { in_hand_ = key; }
  /// The key whose value a hand has begun to change since the last call; "" when none.
  std::string taken() { return std::exchange(taken_, {}); }
  bool typing() const { return !typing_.empty(); }
  bool dragging() const { return !dragging_.empty(); }
  /// Half-typed and refused texts are given up.
  void forget();
  const std::map<std::string, std::string>& refused() const { return refused_why_; }

 private:
  struct Cell {
    Ui& ui;
    const Field& field;
    const std::string& key;
    const Row& row;
    std::optional<double> usual;
    float width;
  };
  Edit text_cell(const Cell& cell);
  Edit number(const Cell& cell);
  /// The value's frame and text; says whether the text was cut short.
  bool paint_number(const Cell& cell, const std::string& text, const ImVec2& low, const ImVec2& size, bool lit) const;
  /// How far the pointer has moved since it took hold of the value, pixels; nothing while it drags nothing.
  std::optional<float> dragged(const Cell& cell, bool active);
  Edit typed(const Cell& cell);
  Edit take(const Cell& cell);
  Edit drag(const Cell& cell, float moved);
  Edit choice(const Cell& cell);
  Edit yes_no(const Cell& cell);
  void begin_typing(const Cell& cell);
  std::string help_of(const Field& field) const;
  std::string face(const Cell& cell) const;

  std::string in_hand_, taken_, typing_, text_, initial_, dragging_;
  double drag_start_ = 0;
  float drag_x_ = 0;
  std::string previous_, back_to_;  ///< Tab and Shift+Tab go from field to field
  bool to_next_ = false;
  bool fresh_ = false, moved_ = false;
  std::map<std::string, std::string> refused_text_, refused_why_;
};

/// Writes a row's label and moves on to where its value stands. Returns the width left for the value, pixels.
float row_label(Ui& ui, const std::string& words, const std::string& help = "");

/// Length of one pixel's drag and the grid that dragged values fall on, in the field's own unit (mm, degrees, 1).
struct DragStep {
  double pixel = 0, grid = 0;
};
DragStep drag_step(const Field& field, double value, const Manner& manner);

}  // namespace sagitta::viewer
