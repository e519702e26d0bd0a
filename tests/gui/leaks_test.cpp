/// A thousand rebuilds leave neither objects on the graphics card nor memory behind.

#include <gtest/gtest.h>
#include <malloc.h>

#include <fstream>

#include "gpu/Object.hpp"
#include "gui/GripHand.hpp"

namespace sagitta::test {
namespace {

/// Memory in use on the heap, bytes.
std::size_t in_use() { return ::mallinfo2().uordblks + ::mallinfo2().hblkhd; }

TEST(Leaks, AThousandRebuildsLeaveNothing) {
  GripHand hand;  // a drawing lies on the board, and moves with every rebuild
  const auto rebuild = [&](int i) {
    Board draft = hand.board();
    draft.board.thickness = 6 + 0.001 * (i % 400);
    draft.inlays[0].shift_along = 0.01 * (i % 100);
    hand.desk().document.preview(draft);
    hand.until([&] { return hand.desk().results.model && hand.desk().results.model->board == hand.board(); }, 20);
    hand.frames(1);
  };
  for (int i = 0; i < 50; ++i) rebuild(i + 1);
  const int objects = viewer::gpu_alive();
  const std::size_t bytes = in_use();
  for (int i = 0; i < 1000; ++i) rebuild(i + 7);
  EXPECT_EQ(viewer::gpu_alive(), objects);
  const double grown = static_cast<double>(in_use()) - static_cast<double>(bytes);
  std::printf("objects %d, heap %.1f MB, grown %.2f MB\n", objects, static_cast<double>(bytes) / 1e6, grown / 1e6);
  EXPECT_LT(grown, 8e6);  // one board's meshes, kept or not, weigh less; a leak of one a rebuild would be gigabytes
  EXPECT_EQ(viewer::gl::errors(), 0);
}

}  // namespace
}  // namespace sagitta::test
