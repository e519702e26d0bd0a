#include "board/Forms.hpp"

#include <algorithm>

#include "board/Reading.hpp"
#include "board/SlotCut.hpp"
#include "board/Spelling.hpp"

namespace sagitta {
namespace {

constexpr Form scale_forms[] = {{"length", ""}, {"bass treble", "square_fret"}};
constexpr Form division_forms[] = {{"steps_per_octave", ""}, {"cents", ""}};
constexpr Form width_forms[] = {
    {"edge_margin", ""}, {"nut_margin heel_margin", ""}, {"nut_width heel_width", ""}, {"nut_width width_at_fret", ""}};
constexpr Form place_forms[] = {{"file_nut file_heel", ""}};
constexpr Form fall_forms[] = {{"fall_from_fret fall", ""}};
constexpr Form size_forms[] = {{"along", ""}, {"across", ""}};

constexpr FormGroup groups[] = {
    {"scale", "the scale length", scale_forms, true},
    {"scale", "the division of the octave", division_forms, false},
    {"board", "the width of the board", width_forms, true},
    {"surface", "the fall-away", fall_forms, false},
    {"neck", "the neck's place in its file", place_forms, false},
    {"inlays", "the size of the artwork", size_forms, true, "artwork"},
    {"cuts", "the size of the drawing", size_forms, true, "drawn"},
};

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : std::string(between)) + part;
  return text;
}

/// One row under the rules of use: which keys its choices use and need, and which forms it takes.
class RowCheck {
 public:
  RowCheck(Reading& reading, const Table& table, std::size_t index)
      : reading_(reading), table_(table), board_(reading.out.board), row_(row(board_, table, index)) {
    prefix_ = row_key(board_, table, index);
    if (!prefix_.empty()) prefix_ += ".";
  }

  void run() {
    for (const FormGroup& group : groups) {
      if (group.table == table_.name && group.only_with.empty()) check_group(group);
    }
    for (const Field& field : fields_of(table_.name)) check_use(field);
    for (const FormGroup& group : groups) {
      if (group.table == table_.name && !group.only_with.empty() && chosen("shape") == group.only_with)
        check_group(group);
    }
  }

 private:
  std::string key(std::string_view name) const { return prefix_ + std::string(name); }

  std::string chosen(std::string_view name) const {
    for (const Field& field : fields_of(table_.name)) {
      if (field.key != name || !reading_.given(key(name)) || !reading_.good(key(name))) continue;
      const Value value = field.access.get(reading(row_));
      if (const int* index = std::get_if<int>(&value))
        return std::string(field.choices[static_cast<std::size_t>(*index)].name);
    }
    return "";
  }
  static ConstRow reading(const Row& row) { return sagitta::reading(row); }

  void drop(const Field& field) {
    field.access.set(row_, {});
    reading_.out.places.erase(key(field.key));
  }
  void drop(const std::string& name) {
    for (const Field& field : fields_of(table_.name)) {
      if (field.key == name) drop(field);
    }
  }

  void missing(std::string_view name, std::string message, std::string hint) {
    if (reading_.chain.whole)
      reading_.report_value(FaultCode::missing_key, key(name), std::move(message), std::move(hint));
  }

  void check_use(const Field& field) {
    const std::string name = key(field.key);
    if (!used_with_cut(field, slot_cut(board_))) return check_cut_use(field, name);
    const Use& use = field.use;
    const bool far = use.key.find('.') != std::string_view::npos;
    const std::string chooser = use.key.empty() ? "" : far ? std::string(use.key) : key(use.key);
    if (!chooser.empty() && !chooser_known(chooser, use)) return;
    const bool used = is_used(field, board_, reading(row_));
    if (reading_.given(name)) {
      if (used) return;
      if (reading_.level(name) > reading_.level(chooser)) return drop(field);
      reading_.report_key(
          FaultCode::not_used, name,
          "\"" + std::string(field.key) + "\" is not used here: it goes with " + with(use.key, use.values),
          "take the line out, or change " + std::string(use.key));
      return;
    }
    if (field.need == Need::yes) {
      return missing(field.key, "\"" + std::string(field.key) + "\" is missing: " + std::string(field.help),
                     allowed_text(field));
    }
    if (use.needed.empty() || !used) return;
    const auto needing = words(use.needed);
    if (std::ranges::find(needing, chosen(use.key)) == needing.end()) return;
    missing(field.key, "\"" + std::string(field.key) + "\" is missing: " + with(use.key, chosen(use.key)) + " needs it",
            allowed_text(field));
  }

  /// A key of slots or wire that are not cut. Frets that could not be read say nothing about it.
  void check_cut_use(const Field& field, const std::string& name) {
    const std::string chooser = reading_.given("slots.cut") ? "slots.cut" : "scale.frets";
    if (!reading_.given(name) || !reading_.given(chooser) || !reading_.good(chooser)) return;
    if (reading_.level(name) > reading_.level(chooser)) return drop(field);
    const std::string why = chooser == "scale.frets"            ? "the board has no frets"
                            : slot_cut(board_) == SlotCut::none ? "slots.cut = \"none\" cuts no slots"
                                                                : "slots.cut = \"lines\" takes no wire";
    reading_.report_key(FaultCode::not_used, name, "\"" + std::string(field.key) + "\" is not used here: " + why,
                        "take the line out");
  }

  /// A choice that was wrong or is itself missing says nothing about the keys that hang on it.
  bool chooser_known(const std::string& chooser, const Use& use) const {
    if (!reading_.good(chooser)) return false;
    const Field* field = find_field(chooser);
    return reading_.given(chooser) || field == nullptr || field->need != Need::yes || use.key.empty();
  }

  std::string with(std::string_view chooser, std::string_view values) const {
    auto names = words(values);
    if (names != std::vector<std::string>{"true"}) {
      for (std::string& name : names) name = "\"" + name + "\"";
    }
    return std::string(chooser) + " = " + listed(names);
  }

  std::string allowed_text(const Field& field) const {
    if (field.kind == Kind::choice || field.kind == Kind::choices) {
      std::vector<std::string> names;
      for (const Choice& choice : field.choices) names.push_back("\"" + std::string(choice.name) + "\"");
      return "allowed are " + listed(names);
    }
    return field.range.most > 0 ? allowed(field, board_.units) : "";
  }

  void check_group(const FormGroup& group) {
    std::vector<const Form*> taken;
    int nearest = deepest_base + 1;
    for (const Form& form : group.forms) {
      const int level = form_level(form);
      if (level <= deepest_base) taken.push_back(&form);
      nearest = std::min(nearest, level);
    }
    for (const Form* form : std::vector(taken))
      if (form_level(*form) != nearest) leave(*form, taken);
    choose_among_sharing(taken);
    if (taken.size() > 1) return report_clash(group, taken);
    if (taken.empty()) {
      if (!group.needed) return;
      std::vector<std::string> ways;
      for (const Form& form : group.forms) ways.push_back(joined(words(form.keys), " and "));
      return missing(words(group.forms[0].keys)[0], std::string(group.thing) + " is missing",
                     "give " + joined(ways, ", or "));
    }
    for (const std::string& name : words(taken[0]->keys)) {
      if (reading_.given(key(name))) continue;
      missing(name,
              "\"" + name + "\" is missing: " + std::string(group.thing) + " needs " +
                  joined(words(taken[0]->keys), " and "),
              "");
    }
  }

  /// Takes a form out of those chosen, with the keys that none of the others has.
  void leave(const Form& form, std::vector<const Form*>& taken) {
    std::erase(taken, &form);
    for (const std::string& name : all_keys(form))
      if (std::ranges::none_of(taken, [&](const Form* other) { return has(*other, name); })) drop(name);
  }

  /// A key may belong to two forms ("nut_width"): the form counts whose other key is given, by the nearest file.
  void choose_among_sharing(std::vector<const Form*>& taken) {
    for (const Form* form : std::vector(taken))
      for (const Form* other : std::vector(taken)) {
        const bool share =
            form != other && std::ranges::any_of(all_keys(*form), [&](const auto& name) { return has(*other, name); });
        if (!share || std::ranges::find(taken, form) == taken.end() || std::ranges::find(taken, other) == taken.end())
          continue;
        const int own = own_level(*form, *other), others = own_level(*other, *form);
        if (own > others || (own == others && own > deepest_base && form > other)) leave(*form, taken);
      }
  }

  bool has(const Form& form, const std::string& name) const {
    const auto keys = all_keys(form);
    return std::ranges::find(keys, name) != keys.end();
  }

  /// The nearest file that gives a key of the form which the other form does not have.
  int own_level(const Form& form, const Form& other) const {
    int level = deepest_base + 1;
    for (const std::string& name : all_keys(form))
      if (!has(other, name)) level = std::min(level, reading_.level(key(name)));
    return level;
  }

  std::vector<std::string> all_keys(const Form& form) const {
    auto keys = words(form.keys);
    for (std::string& extra : words(form.extras)) keys.push_back(std::move(extra));
    return keys;
  }

  /// The nearest file that gives a key of the form.
  int form_level(const Form& form) const {
    int level = deepest_base + 1;
    for (const std::string& name : all_keys(form)) level = std::min(level, reading_.level(key(name)));
    return level;
  }

  void report_clash(const FormGroup& group, const std::vector<const Form*>& taken) {
    for (std::size_t i = 1; i < taken.size(); ++i) {
      for (const std::string& name : all_keys(*taken[i])) {
        if (!reading_.given(key(name)) || has(*taken[0], name)) continue;
        reading_.report_key(FaultCode::given_twice, key(name),
                            "\"" + name + "\" does not go with \"" + first_given(*taken[0], *taken[i]) +
                                "\": " + std::string(group.thing) + " is given in two ways",
                            "keep one of the two ways");
        break;
      }
    }
  }
  /// The first key given of a form that the other form does not have.
  std::string first_given(const Form& form, const Form& other) const {
    for (const std::string& name : all_keys(form)) {
      if (reading_.given(key(name)) && !has(other, name)) return name;
    }
    return "";
  }

  Reading& reading_;
  const Table& table_;
  Board& board_;
  Row row_;
  std::string prefix_;
};

}  // namespace

std::span<const FormGroup> form_groups() { return groups; }

void check_forms(Reading& reading) {
  for (const Table& table : tables()) {
    for (std::size_t i = 0; i < row_count(reading.out.board, table); ++i) RowCheck(reading, table, i).run();
  }
}

}  // namespace sagitta
