// campaign FOLDER SPACE FIRST COUNT [SHRINKING]: judges random boards FIRST .. FIRST + COUNT - 1 of the space (core,
// whole, near, ends, kinds). SHRINKING boards may be judged to make a failing one smaller (60). Goes on where an
// earlier call with the same words was stopped. Exit code 0: all sound; 1: some are not; 2: usage.

#include <cstdlib>
#include <iostream>
#include <stdexcept>

#include "campaign/Campaign.hpp"

int main(int count, char** words) {
  using namespace sagitta::campaign;
  const auto space = count == 5 || count == 6 ? space_named(words[2]) : std::nullopt;
  if (!space) {
    std::cerr << "usage: campaign FOLDER core|whole|near|ends|kinds FIRST COUNT [SHRINKING]\n";
    return 2;
  }
  try {
    Settings settings;
    if (count == 6) settings.shrinking = std::atoi(words[5]);
    const Range range{*space, std::strtoull(words[3], nullptr, 10), std::atoi(words[4])};
    const auto records = run(range, words[1], std::cout, settings);
    print(records, std::cout);
    for (const Record& record : records)
      if (record.outcome != Outcome::sound) return 1;
  } catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 2;
  }
  return 0;
}
