#pragma once

/// The decisions of a board in the order in which a shop makes them: which keys stand in which group, under the trade's
/// words.

#include <span>
#include <string>
#include <string_view>

namespace sagitta::viewer {

/// One row: a key of the field table and what a builder calls it.
struct DecisionLine {
  std::string_view key;
  std::string_view label;
};

/// Rows of one table under a heading of their own inside a group. Lists of tables repeat the block for each entry.
struct DecisionBlock {
  std::string_view table;  ///< of the field table; rows of other tables may stand in a block that repeats nothing
  std::string_view title;  ///< "" for none
  std::span<const DecisionLine> lines;
};

struct DecisionGroup {
  std::string_view title;
  std::span<const DecisionBlock> blocks;
};

/// Scale and frets, strings, board, surface, nut and slots, inlays and dots, blank and set-ups, cutters, neck.
std::span<const DecisionGroup> decision_groups();

/// A key of the field table that has no row among the decisions, and why.
struct KeyWithoutRow {
  std::string_view key;
  std::string_view reason;
};
/// All of them: every other key has exactly one row.
std::span<const KeyWithoutRow> keys_without_row();

/// The group that holds a key, by the key itself, else by its table; -1 when none does.
int group_of_key(const std::string& key);
/// The key as the field table has it: "inlays[2].depth" -> "inlays.depth", "materials.reed.density" ->
/// "materials.density".
std::string plain_key(const std::string& key);
/// What the builder calls a key: "Slot width"; the key itself when it has no row.
std::string label_of_key(const std::string& key);
/// Keys in a sentence replaced by what the builder calls them: "make slots.width ..." -> "make slot width ...".
std::string with_labels(std::string text);
/// A key of the panel to go to for a problem's key, which may be a table or a key without a row; "" when none fits.
std::string key_to_show(const std::string& key);

}  // namespace sagitta::viewer
