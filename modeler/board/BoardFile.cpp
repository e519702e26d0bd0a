#include "board/BoardFile.hpp"

#include <algorithm>
#include <filesystem>

#include "board/Length.hpp"
#include "board/Reading.hpp"
#include "board/SourceText.hpp"
#include "board/Spelling.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> known_keys(std::string_view table) {
  std::vector<std::string> keys;
  for (const Field& field : fields_of(table)) keys.emplace_back(field.key);
  if (table.empty()) {
    for (const Table& other : tables()) {
      if (!other.name.empty()) keys.emplace_back(other.name);
    }
  }
  return keys;
}

/// Where a key that is not known here belongs, or which was probably meant.
std::string hint_for_unknown(std::string_view table, const std::string& key) {
  const std::string near = nearest_word(key, known_keys(table));
  if (!near.empty()) return "did you mean \"" + near + "\"?";
  std::vector<std::string> homes;
  for (const Field& field : fields()) {
    if (field.key == key)
      homes.push_back(field.table.empty() ? "the top of the file" : "[" + std::string(field.table) + "]");
  }
  if (!homes.empty()) return "this key belongs under " + listed(homes);
  return "known here: " + listed(known_keys(table));
}

class BoardReader {
 public:
  explicit BoardReader(Reading& reading) : reading_(reading), board_(reading.out.board) {}

  void read() {
    const Node& root = reading_.chain.root;
    for (const Entry& entry : root.entries) {
      const Table* table = entry.key.empty() ? nullptr : find_table(entry.key);
      if (table != nullptr) {
        read_table(*table, entry);
      } else {
        read_entry(*find_table(""), entry, &board_, "");
      }
    }
  }

 private:
  void report(FaultCode code, const Entry& entry, const std::string& key, std::string message, std::string hint) {
    reading_.report(code, entry.node.level, entry.spot, key, std::move(message), std::move(hint));
  }

  /// True when the entry's form is not the one needed; reports it.
  bool refuse_form(const Entry& entry, bool sound, std::string_view opening, std::string_view closing) {
    if (sound) return false;
    report(FaultCode::wrong_kind, entry, entry.key,
           "found " + std::string(entry.node.type_name()) + " where " +
               (opening == "[[" ? "a list of tables" : "a table") + " is needed",
           "write " + std::string(opening) + entry.key + std::string(closing) + " on a line of its own");
    return true;
  }

  void read_table(const Table& table, const Entry& entry) {
    reading_.place(entry.key, entry.spot, entry.node);
    const bool is_table = entry.node.type == Node::Type::table;
    if (table.form == TableForm::many) {
      if (!refuse_form(entry, entry.node.is_list_of_tables(), "[[", "]]")) read_list(table, entry);
      return;
    }
    if (refuse_form(entry, is_table, "[", table.form == TableForm::named ? ".NAME]" : "]")) return;
    if (table.form == TableForm::named) return read_named(table, entry);
    if (table.form == TableForm::free) return read_free(entry);
    set_row_count(board_, table, 1);
    read_row(table, entry.node, &board_, entry.key);
  }

  void read_list(const Table& table, const Entry& entry) {
    constexpr std::size_t most_rows = 500;
    if (entry.node.items.size() > most_rows) {
      return report(FaultCode::too_many, entry, entry.key, "more than 500 of [[" + entry.key + "]]", "take some out");
    }
    set_row_count(board_, table, entry.node.items.size());
    for (std::size_t i = 0; i < entry.node.items.size(); ++i) {
      const std::string key = row_key(board_, table, i);
      reading_.place(key, entry.node.items[i].spot, entry.node.items[i]);
      read_row(table, entry.node.items[i], row(board_, table, i), key);
    }
  }

  void read_named(const Table& table, const Entry& entry) {
    for (const Entry& named : entry.node.entries) {
      const std::string key = entry.key + "." + named.key;
      if (named.node.type != Node::Type::table) {
        report(FaultCode::wrong_kind, named, key,
               "found " + std::string(named.node.type_name()) + " where a table is needed",
               "write [" + entry.key + ".NAME] and its keys below it");
        continue;
      }
      reading_.place(key, named.spot, named.node);
      read_row(table, named.node, &board_.materials[named.key], key);
    }
  }

  void read_free(const Entry& entry) {
    for (const Entry& limit : entry.node.entries) {
      const std::string key = entry.key + "." + limit.key;
      reading_.place(key, limit.spot, limit.node);
      if (const auto value = read_limit(reading_, limit.node, key)) board_.limits[limit.key] = *value;
    }
  }

  void read_row(const Table& table, const Node& node, const Row& row, const std::string& prefix) {
    for (const Entry& entry : node.entries) read_entry(table, entry, row, prefix);
  }

  void read_entry(const Table& table, const Entry& entry, const Row& row, const std::string& prefix) {
    const std::string key = prefix.empty() ? entry.key : prefix + "." + entry.key;
    for (const Field& field : fields_of(table.name)) {
      if (field.key != entry.key) continue;
      reading_.place(key, entry.spot, entry.node);
      if (auto value = read_value(reading_, field, entry.node, key)) {
        field.access.set(row, seen_from_here(field, entry.node, std::move(*value)));
      } else {
        reading_.bad.insert(key);
      }
      return;
    }
    const std::string where =
        table.name.empty() ? "at the top of a board file" : "under [" + std::string(table.name) + "]";
    report(FaultCode::unknown_key, entry, key, shown_text(entry.key) + " is not a key " + where,
           hint_for_unknown(table.name, entry.key));
  }

  /// A file that a base names is looked for from the base's folder.
  Value seen_from_here(const Field& field, const Node& node, Value value) const {
    auto* text = std::get_if<std::string>(&value);
    if (node.level == 0 || field.key != "file" || text == nullptr || fs::path(*text).is_absolute()) return value;
    const auto& files = reading_.chain.files;
    const fs::path whole = fs::path(files[static_cast<std::size_t>(node.level)].folder) / *text;
    const fs::path from = files[0].folder.empty() ? fs::path(".") : fs::path(files[0].folder);
    return whole.lexically_normal().lexically_relative(from.lexically_normal()).generic_string();
  }

  Reading& reading_;
  Board& board_;
};

void sort_problems(Reading& reading) {
  const auto file_index = [&](const Problem& problem) {
    return std::ranges::find(reading.chain.files, problem.file, &ChainFile::name) - reading.chain.files.begin();
  };
  std::ranges::stable_sort(reading.out.problems, [&](const Problem& a, const Problem& b) {
    return std::tuple(file_index(a), a.line, a.column) < std::tuple(file_index(b), b.line, b.column);
  });
}

/// "inlays[2].frets[0]" -> "inlays[2].frets" -> "inlays[2]" -> "inlays" -> "".
std::string parent_key(const std::string& key) {
  const std::size_t last = key.find_last_of(".[");
  return last == std::string::npos ? "" : key.substr(0, last);
}

/// The place of the key or of the nearest table around it.
const Place* nearest_place(const Places& places, std::string key) {
  for (; !key.empty(); key = parent_key(key)) {
    if (const auto found = places.find(key); found != places.end()) return &found->second;
  }
  return nullptr;
}

std::string hint_for_fault(const BoardFile& file, const Fault& fault) {
  const Field* field = find_field(fault.key);
  if (!fault.hint.empty() || field == nullptr || field->kind != Kind::length || !file.places.contains(fault.key))
    return fault.hint;
  if (field->key != "radius_at_nut" && field->key != "radius_at_heel") return fault.hint;
  const Value value = field->access.get(&file.board);
  const double* mm = std::get_if<double>(&value);
  return mm == nullptr ? fault.hint : radius_hint(file.board, *mm);
}

}  // namespace

void Reading::report(FaultCode code, int level, TextPosition spot, const std::string& key, std::string message,
                     std::string hint) {
  const std::string& file = chain.files[static_cast<std::size_t>(level)].name;
  out.problems.push_back({code, file, spot.line, spot.column, key, std::move(message), std::move(hint)});
}

void Reading::report_value(FaultCode code, const std::string& key, std::string message, std::string hint) {
  Problem problem{code, out.file, 1, 1, key, std::move(message), std::move(hint)};
  if (const Place* place = nearest_place(out.places, key)) {
    problem.file = place->file;
    problem.line = place->line;
    problem.column = place->column;
  }
  out.problems.push_back(std::move(problem));
}

void Reading::report_key(FaultCode code, const std::string& key, std::string message, std::string hint) {
  const Place& place = out.places.at(key);
  report(code, place.level, {place.key_line, place.key_column}, key, std::move(message), std::move(hint));
}

int Reading::level(const std::string& key) const {
  const auto found = out.places.find(key);
  return found == out.places.end() ? deepest_base + 1 : found->second.level;
}

void Reading::place(const std::string& key, TextPosition key_spot, const Node& node) {
  const std::string& file = chain.files[static_cast<std::size_t>(node.level)].name;
  out.places[key] = {file, node.spot.line, node.spot.column, key_spot.line, key_spot.column, node.level};
}

BoardFile read_board_text(std::string_view text, const std::string& file_name, const std::string& folder,
                          Outside outside) {
  Reading reading;
  reading.chain = read_chain(text, file_name, folder, outside);
  reading.out.file = file_name;
  reading.out.board.folder = folder;
  for (const ChainFile& each : reading.chain.files) reading.out.read_from.push_back(each.name);
  reading.out.problems = reading.chain.problems;
  if (!reading.chain.readable) return reading.out;
  reading.out.board.units = reading.chain.files[0].units;
  BoardReader(reading).read();
  check_fretless(reading);
  check_forms(reading);
  check_rules(reading);
  sort_problems(reading);
  return std::move(reading.out);
}

BoardFile read_board(const std::string& path, Outside outside) {
  auto text = fetch_text(path, path);
  if (auto* problem = std::get_if<Problem>(&text)) {
    BoardFile file;
    file.file = path;
    file.read_from.push_back(path);
    file.problems.push_back(std::move(*problem));
    return file;
  }
  return read_board_text(std::get<std::string>(text), path, fs::path(path).parent_path().string(), outside);
}

std::vector<Problem> locate(const BoardFile& file, const Faults& faults) {
  std::vector<Problem> problems;
  for (const Fault& fault : faults) {
    Problem problem{fault.code, file.file, 1, 1, fault.key, fault.message, hint_for_fault(file, fault), fault.where};
    if (const Place* place = nearest_place(file.places, fault.key)) {
      problem.file = place->file;
      problem.line = place->line;
      problem.column = place->column;
    }
    problems.push_back(std::move(problem));
  }
  return problems;
}

}  // namespace sagitta
