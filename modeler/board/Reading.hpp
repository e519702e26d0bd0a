#pragma once

/// The inside of reading a board file; BoardFile.hpp is the way in.

#include <optional>
#include <set>
#include <string>
#include <string_view>

#include "board/BoardFile.hpp"
#include "board/Chain.hpp"
#include "board/Fields.hpp"

namespace sagitta {

/// A board file on the way from its tree to a Board.
struct Reading {
  Chain chain;
  BoardFile out;
  std::set<std::string, std::less<>> bad;  ///< dotted keys that are there but could not be read

  void report(FaultCode code, int level, TextPosition spot, const std::string& key, std::string message,
              std::string hint = "");
  /// On the value of a key that the file gives; else on its table's header.
  void report_value(FaultCode code, const std::string& key, std::string message, std::string hint = "");
  /// On the key itself.
  void report_key(FaultCode code, const std::string& key, std::string message, std::string hint = "");

  bool given(const std::string& key) const { return out.places.contains(key); }
  /// Given and read without a problem, or not given.
  bool good(const std::string& key) const { return !bad.contains(key); }
  /// The file that gives the key, 0 for the file itself; a high number when none does.
  int level(const std::string& key) const;
  void place(const std::string& key, TextPosition key_spot, const Node& node);
  Units units(int level) const { return chain.files[static_cast<std::size_t>(level)].units; }
};

/// The value that a node gives to a field, in mm, degrees or plain; reports what is wrong and returns nothing then.
std::optional<Value> read_value(Reading& reading, const Field& field, const Node& node, const std::string& key);

/// A bare number or a length with a unit for [limits]; a length is in the units of the board.
std::optional<double> read_limit(Reading& reading, const Node& node, const std::string& key);

/// On a board without frets: keys that name a fret or a space, and those that it needs instead. Before check_forms.
void check_fretless(Reading& reading);

/// Missing keys, keys that the chosen forms do not use, several forms at once.
void check_forms(Reading& reading);

/// What single values cannot show: lists that must fit each other, frets beyond the last, orders of work.
void check_rules(Reading& reading);

/// The same of [[cuts]].
void check_cuts(Reading& reading);
/// The same of binding, lines and side dots.
void check_edges(Reading& reading);

/// "at least 5 mm and at most 500 mm": what a field allows, in the file's units.
std::string allowed(const Field& field, Units units);

/// A hint when a value (mm) that a field does not allow would do in the other unit or in centimetres; what is nearer to
/// the middle of the range comes first. Else empty. `units` are those it was written in.
std::string other_unit_hint(const Field& field, double mm, Units units);

/// The same for a radius that is too small for the board but, taken as inches, a usual one.
std::string radius_hint(const Board& board, double mm);

/// "dot, block or diamond".
std::string listed(const std::vector<std::string>& words);

}  // namespace sagitta
