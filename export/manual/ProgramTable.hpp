#pragma once

/// What a program understands, as a plain value: manual pages and shells' completions are written from it.

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace sagitta {

/// What a shell offers where a value is expected.
struct Offer {
  enum class Kind { nothing, words, files, folders };
  Kind kind = Kind::nothing;
  std::vector<std::string> words;
};

/// Offers by an option's name ("--units") or a place's ("BOARD"); "new PRESET" holds for that command alone.
using Offers = std::map<std::string, Offer>;

/// One option, or one place (BOARD) of a command.
struct OptionRow {
  std::vector<std::string> names;  ///< "-h", "--help"; of a place its one word
  std::string value;               ///< the word that stands for the value; "" for a flag
  std::string help;
  std::string standard;  ///< the value that holds when none is given; "" where there is none
  Offer offer;
  bool required = false;
  bool repeats = false;  ///< may be given several times
};

struct CommandRow {
  std::string name, help;
  std::vector<OptionRow> places, options;
};

/// A program; without commands its places and options are those of `self`.
struct ProgramTable {
  CommandRow self;
  std::vector<CommandRow> commands;
  std::string version, date;                                  ///< date: of the release, YYYY-MM-DD
  std::vector<std::pair<int, std::string>> exits;             ///< exit codes and what they mean
  std::vector<std::pair<std::string, std::string>> examples;  ///< a command line, and what it does
  std::vector<std::string> see_also;                          ///< other programs
};

/// Places, options and commands of the program's parser; the rest is empty.
ProgramTable table_of(const CLI::App& program, const Offers& offers);

/// The help up to its first full stop, colon or semicolon.
std::string first_clause(const std::string& help);

}  // namespace sagitta
