#include "solid/Failure.hpp"

#include <gtest/gtest.h>

#include <Standard_ConstructionError.hxx>
#include <new>
#include <thread>

#include "solid/Solid.hpp"

namespace sagitta {
namespace {

TEST(Failure, OfAJobThatEndsIsNone) {
  int done = 0;
  EXPECT_FALSE(failure_of([&] { ++done; }));
  EXPECT_EQ(done, 1);
}

TEST(Failure, OfEveryKindIsToldAndGoesNoFurther) {
  const std::function<void()> jobs[] = {[] { throw BuildError("board", "fret 7 slot", "no"); },
                                        [] { throw std::runtime_error("no"); },
                                        [] { throw std::bad_alloc(); },
                                        [] { throw Standard_ConstructionError("no"); },
                                        [] { throw Standard_ConstructionError(); },
                                        [] { throw 1; }};
  for (const auto& job : jobs) {
    const auto wrong = failure_of(job);
    ASSERT_TRUE(wrong);
    EXPECT_FALSE(wrong->empty());
  }
}

TEST(Failure, OfTheKernelDoesNotEndTheProgramFromAThread) {
  std::optional<std::string> wrong;
  std::thread([&] { wrong = failure_of([] { throw Standard_ConstructionError("no"); }); }).join();
  EXPECT_TRUE(wrong);
}

}  // namespace
}  // namespace sagitta
