#include "board/Edit.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Length.hpp"
#include "board/Node.hpp"
#include "board/SourceText.hpp"
#include "board/TextEdits.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

/// One pass over the tables of a file, collecting the edits that lead from the old board to the new one.
class Editor {
 public:
  Editor(std::string_view text, const Node& root, const Board& old_board, const Board& new_board)
      : edits_(text), root_(root), old_(old_board), new_(new_board) {}

  /// The new text, or nothing when the change cannot be made in place.
  std::optional<std::string> run() {
    for (const Table& table : tables()) {
      if (table.form == TableForm::many) {
        edit_list(table);
      } else if (table.form == TableForm::named) {
        edit_named(table);
      } else if (table.form == TableForm::free) {
        edit_limits(table);
      } else {
        edit_single(table);
      }
    }
    if (stuck_) return std::nullopt;
    return edits_.applied();
  }

 private:
  const Node* table_node(std::string_view name) const {
    if (name.empty()) return &root_;
    const Entry* entry = root_.find(name);
    return entry == nullptr ? nullptr : &entry->node;
  }

  void edit_single(const Table& table) {
    const Node* node = table_node(table.name);
    const std::size_t before = row_count(old_, table), after = row_count(new_, table);
    if (after == 0) {
      if (node != nullptr) remove_table(*node);
      return;
    }
    Board before_board = old_;
    set_row_count(before_board, table, 1);
    const std::string added = edit_row(table, node, before_board, 0, 0);
    if (node == nullptr && (before == 0 || !added.empty())) edits_.append(header_text(new_, table, 0) + added);
  }

  void edit_list(const Table& table) {
    const Node* node = table_node(table.name);
    const std::size_t before = row_count(old_, table), after = row_count(new_, table);
    std::size_t first = 0;
    while (first < std::min(before, after) && same_row(table, first, first)) ++first;
    std::size_t last = 0;
    while (last < std::min(before, after) - first && same_row(table, before - 1 - last, after - 1 - last)) ++last;
    if (first + last == before && before == after && !units_changed()) return;
    if (node != nullptr && node->items.size() != before) stuck_ = true;
    if (node == nullptr && before != 0) stuck_ = true;
    if (stuck_) return;
    const std::size_t shared = std::min(before, after) - last;
    for (std::size_t i = 0; i < shared; ++i) edit_row(table, &node->items[i], old_, i, i);
    for (std::size_t i = 0; i < last; ++i)
      edit_row(table, &node->items[before - last + i], old_, before - last + i, after - last + i);
    for (std::size_t i = shared; i < before - last; ++i) remove_table(node->items[i]);
    std::string added;
    for (std::size_t i = shared; i < after - last; ++i)
      added += "\n" + header_text(new_, table, i) + row_text(new_, table, i);
    if (!added.empty()) insert_rows(node, shared, added);
  }

  bool same_row(const Table& table, std::size_t before, std::size_t after) const {
    return std::ranges::all_of(fields_of(table.name), [&](const Field& field) {
      return field.access.get(row(old_, table, before)) == field.access.get(row(new_, table, after));
    });
  }

  void insert_rows(const Node* node, std::size_t behind, const std::string& added) {
    if (node == nullptr || node->items.empty()) return edits_.append(added.substr(1));
    if (behind == 0) return edits_.insert(edits_.line_start(node->items[0].spot), added.substr(1) + "\n");
    if (!has_header(node->items[behind - 1])) {
      stuck_ = true;
      return;
    }
    edits_.insert(end_of_table(node->items[behind - 1]), added);
  }

  void edit_named(const Table& table) {
    const Node* node = table_node(table.name);
    for (const auto& [name, material] : old_.materials) {
      const Entry* entry = node == nullptr ? nullptr : node->find(name);
      if (entry != nullptr && !new_.materials.contains(name)) remove_table(entry->node);
    }
    std::size_t after = 0;
    for (const auto& [name, material] : new_.materials) {
      const Entry* entry = node == nullptr ? nullptr : node->find(name);
      const auto found = old_.materials.find(name);
      if (entry != nullptr && found != old_.materials.end()) {
        edit_row(table, &entry->node, old_, static_cast<std::size_t>(std::distance(old_.materials.begin(), found)),
                 after);
      } else if (found == old_.materials.end() || found->second != material) {
        edits_.append(header_text(new_, table, after) + row_text(new_, table, after));
      }
      ++after;
    }
  }

  void edit_limits(const Table& table) {
    const Node* node = table_node(table.name);
    std::string added;
    for (const auto& [name, limit] : old_.limits) {
      const Entry* entry = node == nullptr ? nullptr : node->find(name);
      if (entry != nullptr && !new_.limits.contains(name)) remove_entry(*node, *entry);
    }
    for (const auto& [name, limit] : new_.limits) {
      const Entry* entry = node == nullptr ? nullptr : node->find(name);
      const auto found = old_.limits.find(name);
      if (found != old_.limits.end() && found->second == limit) continue;
      if (entry != nullptr) {
        edits_.replace_value(entry->node.spot, decimal(limit));
      } else {
        added += key_text(name) + " = " + decimal(limit) + "\n";
      }
    }
    add_lines(table, node, added);
  }

  /// Edits what stands in the row's table; returns the lines for keys that have no table yet.
  std::string edit_row(const Table& table, const Node* node, const Board& before_board, std::size_t before,
                       std::size_t after) {
    const ConstRow old_row = row(before_board, table, before), new_row = row(new_, table, after);
    std::string added;
    for (const Field& field : fields_of(table.name)) {
      const Value old_value = field.access.get(old_row), new_value = field.access.get(new_row);
      const Entry* entry = node == nullptr ? nullptr : node->find(field.key);
      const bool said = !std::holds_alternative<std::monostate>(new_value) && is_used(field, new_, new_row);
      const bool was_said = !std::holds_alternative<std::monostate>(old_value) && is_used(field, before_board, old_row);
      if (entry != nullptr && !said) {
        if (was_said) remove_entry(*node, *entry);
      } else if (entry != nullptr) {
        change_value(field, entry->node, old_value, new_value);
      } else if (said && old_value != new_value) {
        added += std::string(field.key) + " = " + value_text(field, new_value, new_.units) + "\n";
      }
    }
    add_lines(table, node, added);
    return added;
  }

  void change_value(const Field& field, const Node& node, const Value& before, const Value& after) {
    const bool rewrite = units_changed() && field.is_length();
    if (before == after && !rewrite) return;
    if (const double* mm = std::get_if<double>(&after); mm != nullptr && field.is_length()) {
      const double* was = std::get_if<double>(&before);
      return change_length(field, node, was == nullptr ? *mm + 1 : *was, *mm);
    }
    const auto* numbers = std::get_if<std::vector<double>>(&after);
    const auto* old_numbers = std::get_if<std::vector<double>>(&before);
    if (numbers != nullptr && old_numbers != nullptr && numbers->size() == node.items.size() && field.is_length()) {
      for (std::size_t i = 0; i < numbers->size(); ++i)
        change_length(field, node.items[i], (*old_numbers)[i], (*numbers)[i]);
      return;
    }
    if ((field.kind == Kind::colours || field.kind == Kind::named) && edits_.at(node.spot) != '{') {
      stuck_ = true;
      return;
    }
    edits_.replace_value(node.spot, value_text(field, after, new_.units));
  }

  /// Keeps the unit and the fractions that the builder wrote.
  void change_length(const Field& field, const Node& node, double before, double after) {
    const auto* written = std::get_if<std::string>(&node.value);
    const auto read =
        written == nullptr ? std::variant<Length, LengthError>(Length()) : read_length(*written, old_.units);
    const Length* length = std::get_if<Length>(&read);
    const bool own_unit = written != nullptr && length != nullptr && length->unit;
    if (before == after && (own_unit || !units_changed())) return;
    edits_.replace_value(
        node.spot, own_unit ? length_like(*length, after) : length_text(after, new_.units, field.kind == Kind::speed));
  }

  std::string length_like(const Length& length, double mm) const {
    const std::string minute = length.per_minute ? "/min" : "";
    const std::string unit = " " + std::string(unit_name(*length.unit)) + minute;
    if (length.fraction && *length.unit == Units::inch) {
      const auto fraction = inch_fraction(mm);
      const auto read = read_length(fraction.value_or(""), Units::inch);
      const Length* back = std::get_if<Length>(&read);
      if (back != nullptr && back->mm == mm) return quoted(*fraction + unit);
    }
    const auto bare = bare_length(mm, *length.unit);
    const std::string in_mm = decimal(mm) + " mm" + minute;
    return quoted(bare && bare->size() + unit.size() <= in_mm.size() ? *bare + unit : in_mm);
  }

  bool units_changed() const { return old_.units != new_.units; }
  bool has_header(const Node& table) const { return edits_.at(table.spot) == '['; }

  /// Behind the last line that belongs to the table's keys.
  std::size_t end_of_table(const Node& table) const {
    std::size_t end = edits_.line_end(edits_.offset(table.spot));
    for (const Entry& entry : table.entries) {
      const bool nested = entry.node.type == Node::Type::table && has_header(entry.node);
      end = std::max(end, nested ? end_of_table(entry.node) : edits_.line_end(edits_.value_end(entry.node.spot)));
    }
    return end;
  }

  void remove_table(const Node& table) {
    if (!has_header(table)) {
      stuck_ = true;
      return;
    }
    edits_.remove_lines(edits_.line_start(table.spot), end_of_table(table));
  }

  void remove_entry(const Node& table, const Entry& entry) {
    const bool in_braces = &table != &root_ && edits_.at(table.spot) == '{';
    if (in_braces || entry.node.type == Node::Type::table) {
      if (in_braces || edits_.at(entry.node.spot) != '{') {
        stuck_ = true;
        return;
      }
    }
    edits_.remove_lines(edits_.line_start(entry.spot), edits_.line_end(edits_.value_end(entry.node.spot)));
  }

  /// Lines for the end of a table that is there.
  void add_lines(const Table& table, const Node* node, const std::string& lines) {
    if (lines.empty()) return;
    if (node == nullptr) {
      if (table.form == TableForm::free) edits_.append(header_text(new_, table, 0) + lines);
      return;
    }
    if (table.form == TableForm::top) return edits_.insert(end_of_top(), lines);
    const char opening = edits_.at(node->spot);
    if (opening != '[') {
      stuck_ = true;
      return;
    }
    std::size_t end = edits_.line_end(edits_.offset(node->spot));
    for (const Entry& entry : node->entries) {
      if (entry.node.type == Node::Type::table && has_header(entry.node)) continue;
      end = std::max(end, edits_.line_end(edits_.value_end(entry.node.spot)));
    }
    edits_.insert(end, lines);
  }

  std::size_t end_of_top() const {
    std::size_t end = 0;
    for (const Entry& entry : root_.entries) {
      if (find_field(entry.key) == nullptr) continue;
      end = std::max(end, edits_.line_end(edits_.value_end(entry.node.spot)));
    }
    return end;
  }

  TextEdits edits_;
  const Node& root_;
  const Board& old_;
  const Board& new_;
  bool stuck_ = false;
};

}  // namespace

std::string edit_text(std::string_view old_text, const Board& old_board, const Board& new_board) {
  const Board target = tidy(new_board);
  const auto reads_as_target = [&](const std::string& text) {
    return tidy(read_board_text(text, "edited.toml", target.folder).board) == target;
  };
  const std::string_view text = without_byte_order_mark(old_text);
  const std::string_view mark = old_text.substr(0, old_text.size() - text.size());
  if (!look_over(text, "")) {
    const auto parsed = parse_toml(text, "", 0);
    if (const Node* root = std::get_if<Node>(&parsed)) {
      const auto edited = Editor(text, *root, tidy(old_board), target).run();
      if (edited && reads_as_target(*edited)) return std::string(mark) + *edited;
    }
  }
  return write_board(target);
}

}  // namespace sagitta
