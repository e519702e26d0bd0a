#include "jobs/WaysOut.hpp"

#include "release/RescueReport.hpp"

namespace sagitta::viewer {

WaysOut::WaysOut()
    : NewestJob([](const Board& board, FoundWays& found) {
        found.board = board;
        BoardFile file;
        file.board = board;
        found.ways = ways_out(file);
      }) {}

}  // namespace sagitta::viewer
