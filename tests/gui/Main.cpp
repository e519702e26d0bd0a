#include <gmock/gmock.h>

#include "input/NeckReply.hpp"

/// The window reads a neck's file in a process of its own: this very program, run again.
int main(int argc, char** argv) {
  if (const auto code = sagitta::run_as_neck_reader(argc, argv)) return *code;
  testing::InitGoogleMock(&argc, argv);
  return RUN_ALL_TESTS();
}
