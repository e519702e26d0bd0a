#include "program/Guarded.hpp"

#include <cerrno>
#include <cstdio>
#include <iostream>

#include "cad/Interrupt.hpp"
#include "drawing/JobPart.hpp"
#include "folder/Folder.hpp"
#include "package/FaultReport.hpp"
#include "package/HandOff.hpp"
#include "package/OrderRules.hpp"
#include "package/Repeat.hpp"
#include "program/Command.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {

int complain(const std::string& message, int code, const std::string& more) {
  std::cerr << "sagitta: " << terminal_text(message) << "\n" << more;
  return code;
}

int guarded(const std::function<int()>& run) try {
  const int code = run();
  std::cout.flush();
  // Closed here and not by the system: some disks tell only then that they are full.
  const bool written = std::cout && (std::fclose(stdout) == 0 || errno == EBADF);
  return written ? code : complain("the output could not be written; is the disk full?", exit_failed);
} catch (const UsageError& error) {
  return complain(error.what(), exit_input);
} catch (const PartError& error) {
  return complain(error.what(), exit_input);
} catch (const OrderError& error) {
  return complain(error.what(), exit_input);
} catch (const RepeatError& error) {
  return complain(error.what(), exit_input);
} catch (const NothingToWrite& error) {
  return complain(error.what(), exit_input);
} catch (const FolderError& error) {
  return complain(error.what(), exit_failed);
} catch (const Interrupted& error) {
  return complain(std::string(error.what()) + "; nothing was written", exit_failed);
} catch (const ProgramFault& error) {
  return complain(error.what(), exit_fault);
} catch (const KernelFailure& failure) {
  return complain(failure.what(), exit_fault);
} catch (const std::bad_alloc&) {
  return complain("there is not enough memory for this board", exit_failed);
} catch (const std::exception& error) {
  return complain("something went wrong that the program did not foresee: please report it with the board file. (" +
                      std::string(error.what()) + ")",
                  exit_fault);
}

}  // namespace sagitta
