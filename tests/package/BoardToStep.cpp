// Prints what is found on a board and writes the finished board as a STEP file:
//   board_to_step BOARD.toml BOARD.step
#include <fstream>
#include <iostream>

#include "cad/Gate.hpp"
#include "input/BoardFindings.hpp"
#include "input/PreparedFile.hpp"

int main(int count, char** words) {
  if (count != 3) return std::cerr << "usage: board_to_step BOARD.toml BOARD.step\n", 2;
  using namespace sagitta;
  const std::variant<PreparedBoard, Problems> prepared = prepare(std::string(words[1]));
  for (const Problem& problem : problems_of(prepared)) std::cerr << problem.message << '\n';
  const PreparedBoard* ready = std::get_if<PreparedBoard>(&prepared);
  if (!ready) return 2;
  for (const Finding& finding : board_findings(*ready))
    std::cout << severity_name(finding.severity) << ' ' << finding.name << ' ' << finding.message << '\n';
  try {
    const SoundSolid board = sound_solid(ready->shell(Stage::finished), {"finished", "board"});
    const StepBody body{"board", "board", "#806040", board.solid, board.measured};
    std::ofstream file(words[2], std::ios::binary);
    file << sound_step({ready->board().name, {body}, {}}, {}, "finished");
    file.close();
    if (!file) return std::cerr << words[2] << " could not be written\n", 3;
    std::cout << board.measured.volume << " mm3 in " << words[2] << '\n';
  } catch (const std::exception& failure) {
    return std::cerr << failure.what() << '\n', 4;
  }
}
