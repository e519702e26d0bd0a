#include "program/KernelGuarded.hpp"

#include <Standard_Failure.hxx>

#include "program/Guarded.hpp"

namespace sagitta {
namespace {

int without_kernel_failures(const std::function<int()>& run) try { return run(); } catch (const Standard_Failure&) {
  throw KernelFailure("the geometry kernel gave up on this board: please report it with the board file");
}

}  // namespace

int kernel_guarded(const std::function<int()>& run) {
  return guarded([&] { return without_kernel_failures(run); });
}

}  // namespace sagitta
