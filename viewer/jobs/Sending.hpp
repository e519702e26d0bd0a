#pragma once

/// Writing the hand-off folder in the background.

#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <set>
#include <string>
#include <thread>
#include <vector>

#include "board/Board.hpp"
#include "package/HandOff.hpp"
#include "plane/Cancel.hpp"

namespace sagitta::viewer {

struct SendingOrder {
  Board board;
  std::string folder;  ///< absent or empty, unless `replace` and Folder.hpp lets it be replaced
  ExportKinds kinds;
  std::string paper = "A4";  ///< that PDFs are printed on
  bool replace = false;
  bool pieces = true;                         ///< the pieces and the assemblies with them too
  std::set<std::string> setups;               ///< folders of the set-ups that get drawings; empty: all
  bool trial = false;                         ///< the trial strip instead of the job
  bool despite_stops = false;                 ///< written although a finding says stop
  std::vector<std::filesystem::path> inputs;  ///< the files that the board is made from
};

struct SendingState {
  bool running = false;
  double share = 0;     ///< 0 .. 1
  std::string what;     ///< "slotted.step"
  std::string outcome;  ///< empty while running; what happened, naming the folder
  bool good = false;
};

class Sending {
 public:
  Sending() = default;
  ~Sending();
  Sending(const Sending&) = delete;
  Sending& operator=(const Sending&) = delete;
  /// Starts; one at a time. `wake` is called from the other thread when there is news.
  void start(SendingOrder order, std::function<void()> wake);
  void cancel() { cancel_.request(); }
  SendingState state() const;
  void forget();  ///< the outcome has been read

 private:
  void run(const SendingOrder& order);
  SendingState sent(const SendingOrder& order);  ///< how it ended
  void write(const SendingOrder& order, const PreparedBoard& ready, const std::vector<Finding>& findings,
             Folder& folder);
  void tell(const SendingState& state);
  mutable std::mutex mutex_;
  SendingState state_;
  Cancel cancel_;
  std::function<void()> wake_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
