#include "solid/Failure.hpp"

#include <Standard_Failure.hxx>
#include <new>

#include "solid/Solid.hpp"

namespace sagitta {

std::optional<std::string> failure_of(const std::function<void()>& job) try {
  job();
  return std::nullopt;
} catch (const BuildError& error) {
  return "stage " + error.stage + " could not be made near " + error.feature + ": " + error.what();
} catch (const std::bad_alloc&) {
  return "there is not enough memory for this board";
} catch (const std::exception& error) {
  return error.what();
} catch (const Standard_Failure& failure) {
  const char* message = failure.GetMessageString();
  const std::string said = message ? message : "";
  return "the geometry kernel gave up (" + std::string(failure.DynamicType()->Name()) + (said.empty() ? "" : ": ") +
         said + "): please report it with the board file";
} catch (...) {
  return "something went wrong that the program did not foresee: please report it with the board file";
}

}  // namespace sagitta
