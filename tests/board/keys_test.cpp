// The field table is sound, and the texts made from it name every key.

#include "board/Keys.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "board/Fields.hpp"
#include "board/Length.hpp"
#include "board/Materials.hpp"
#include "board/Practice.hpp"
#include "board/Spelling.hpp"

namespace sagitta {
namespace {

TEST(Fields, AreSound) {
  std::set<std::string> seen;
  for (const Field& field : fields()) {
    EXPECT_TRUE(seen.insert(field.dotted()).second) << field.dotted() << " is there twice";
    EXPECT_NE(find_table(field.table), nullptr) << field.table;
    EXPECT_FALSE(field.help.empty()) << field.dotted();
    EXPECT_EQ(find_field(field.dotted()), &field);
    const bool choosing = field.kind == Kind::choice || field.kind == Kind::choices;
    EXPECT_EQ(choosing, !field.choices.empty()) << field.dotted();
    EXPECT_LE(field.range.least, field.range.most) << field.dotted();
    EXPECT_TRUE(!field.is_length() || field.range.least < field.range.most) << field.dotted();
  }
  EXPECT_EQ(find_field("inlays[2].frets[0]"), find_field("inlays.frets"));
  EXPECT_EQ(find_field("scale.lenght"), nullptr);
}

TEST(Fields, DefaultsInWordsAreTheDefaultsOfTheBoard) {
  for (const Field& field : fields()) {
    const Value value = default_value(field);
    if (field.fallback.empty() || field.need == Need::yes) continue;
    if (const double* number = std::get_if<double>(&value)) {
      const auto read = read_length(field.fallback, Units::mm);
      const Length* length = std::get_if<Length>(&read);
      ASSERT_NE(length, nullptr) << field.dotted();
      EXPECT_EQ(length->mm, *number) << field.dotted();
      EXPECT_TRUE(field.range.holds(*number)) << field.dotted();
    } else if (const int* index = std::get_if<int>(&value)) {
      const std::string shown =
          field.kind == Kind::choice ? std::string(field.choices[*index].name) : std::to_string(*index);
      EXPECT_EQ(shown, field.fallback) << field.dotted();
    } else if (const bool* yes = std::get_if<bool>(&value)) {
      EXPECT_EQ(*yes ? "true" : "false", field.fallback) << field.dotted();
    } else if (const auto* text = std::get_if<std::string>(&value)) {
      EXPECT_EQ(*text, field.fallback) << field.dotted();
    }
  }
}

TEST(Fields, SetAndGet) {
  Board board;
  const Field& length = *find_field("scale.length");
  EXPECT_TRUE(std::holds_alternative<std::monostate>(length.access.get(&board)));
  length.access.set(&board, 648.0);
  EXPECT_EQ(board.scale.length, 648);
  length.access.set(&board, {});
  EXPECT_FALSE(board.scale.length);
  find_field("binding.width")->access.set(&board, 1.5);
  ASSERT_TRUE(board.binding);
  EXPECT_EQ(board.binding->width, 1.5);
  set_row_count(board, *find_table("inlays"), 2);
  find_field("inlays.depth")->access.set(row(board, *find_table("inlays"), 1), 2.0);
  EXPECT_EQ(board.inlays[1].depth, 2);
  EXPECT_EQ(row_key(board, *find_table("inlays"), 1), "inlays[1]");
}

TEST(Keys, NameEveryKeyOnce) {
  const std::string text = keys_text(), markdown = keys_markdown();
  for (const Field& field : fields()) {
    EXPECT_NE(text.find("\n  " + std::string(field.key) + " "), std::string::npos) << field.dotted();
    EXPECT_NE(text.find(std::string(field.help) + "\n"), std::string::npos) << field.dotted();
    EXPECT_NE(markdown.find("| `" + std::string(field.key) + "` | "), std::string::npos) << field.dotted();
  }
  EXPECT_EQ(text.find("; default not"), std::string::npos);
  EXPECT_NE(markdown.find("### `[[inlays]]`"), std::string::npos);
}

TEST(Keys, SayWhatIsNeeded) {
  EXPECT_EQ(default_text(*find_field("scale.length")), "required, or bass and treble");
  EXPECT_EQ(default_text(*find_field("scale.square_fret")), "0; not with length");
  EXPECT_EQ(default_text(*find_field("surface.radius_at_heel")), "required with profile = \"compound\"");
  EXPECT_EQ(default_text(*find_field("surface.fall")), "only together with fall_from_fret");
  EXPECT_EQ(default_text(*find_field("slots.edge_left")), "1.5 mm; only with ends = \"blind\"");
  EXPECT_EQ(range_text(*find_field("inlays.clearance")), "0, or 0.001 to 5");
  EXPECT_EQ(range_text(*find_field("surface.radius_at_nut")), "5 to 100000000");
}

TEST(Materials, BuiltInAndOwn) {
  Board board;
  // Densities: ebony 1009, hard maple 705, cast PMMA 1190 kg/m3, as published for these materials.
  EXPECT_EQ(material(board, "ebony").density, 1009);  // USDA Agriculture Handbook 607: 63 lb/ft3
  EXPECT_EQ(material(board, "maple").density, 705);
  EXPECT_EQ(material(board, "acrylic").density, 1190);
  EXPECT_EQ(material(board, "shell").kind, MaterialKind::shell);
  EXPECT_EQ(material(board, "pau ferro").density, 865);
  EXPECT_FALSE(material(board, "driftwood").known);
  board.materials["driftwood"] = {500, "#998877", MaterialKind::wood, {}, {}, {}};
  board.materials["ebony"].density = 1100;
  EXPECT_TRUE(material(board, "driftwood").known);
  EXPECT_EQ(material(board, "driftwood").colour, "#998877");
  EXPECT_EQ(material(board, "ebony").density, 1100);
  EXPECT_EQ(material(board, "ebony").kind, MaterialKind::wood);
  for (const auto name : built_in_materials()) {
    const MaterialFacts facts = material(board, name);
    EXPECT_TRUE(facts.known);
    EXPECT_GT(facts.density, 100);
    EXPECT_EQ(facts.colour.size(), 7u);
  }
}

TEST(Spelling, NearestWord) {
  EXPECT_EQ(edit_distance("length", "lenght"), 1);
  EXPECT_EQ(edit_distance("", "abc"), 3);
  EXPECT_EQ(nearest_word("radius_nut", {"radius_at_nut", "radius_at_heel"}), "radius_at_nut");
  EXPECT_EQ(nearest_word("zebra", {"scale", "nut"}), "");
  EXPECT_EQ(nearest_word("heron", {"curlew-seven-fan", "heron-six"}), "heron-six");
  EXPECT_EQ(nearest_word("he", {"curlew-seven-fan", "heron-six"}), "");
  EXPECT_EQ(nearest_word("colors", {"colours", "along"}), "colours");
}

/// What is usual must be a key's, allowed, and hold the key's own default.
TEST(Practice, IsOfKeysAndWithinWhatIsAllowed) {
  ASSERT_NE(begin_practice(), end_practice());
  for (const Practice* row = begin_practice(); row != end_practice(); ++row) {
    const Field* field = find_field(row->key);
    ASSERT_TRUE(field) << row->key;
    EXPECT_EQ(practice_of(row->key), row) << row->key << " stands twice";
    EXPECT_TRUE(field->range.holds(row->least)) << row->key;
    EXPECT_TRUE(field->range.holds(row->most)) << row->key;
    EXPECT_TRUE(row->reason.ends_with(".")) << row->key;
    const Value usual = default_value(*field);
    if (const auto* number = std::get_if<double>(&usual); number && row->least < row->most && *number != 0) {
      EXPECT_GE(*number, row->least) << row->key;
      EXPECT_LE(*number, row->most) << row->key;
    }
  }
  EXPECT_EQ(practice_of("slots"), nullptr);
}

}  // namespace
}  // namespace sagitta
