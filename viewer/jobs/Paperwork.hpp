#pragma once

/// The board's papers as pictures of how they will print, made in the background.

#include <condition_variable>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "board/Board.hpp"
#include "paper/ShadedPicture.hpp"
#include "plane/Cancel.hpp"

namespace sagitta::viewer {

struct PrintedPage {
  std::string document;  ///< "template.pdf": the file below the folder
  int number = 1, of = 1;
  sagitta::Picture picture;
};

/// What was made of one order.
struct PrintedPages {
  std::vector<PrintedPage> pages;                ///< document after document
  std::map<std::string, std::string> documents;  ///< their PDF bytes, by name
  std::string trouble;                           ///< why there are none
};

class Paperwork {
 public:
  Paperwork() = default;
  ~Paperwork();
  Paperwork(const Paperwork&) = delete;
  Paperwork& operator=(const Paperwork&) = delete;

  /// Asks for the pages of this board's job, or of its trial strip, on this paper; the same again costs nothing. The
  /// newest order wins. `wake` is called from the other thread when they are there.
  void want(const Board& board, const std::string& paper, bool trial, std::function<void()> wake);
  /// The pages of what was asked for last; null while they are being made, or before.
  std::shared_ptr<const PrintedPages> pages() const;
  bool busy() const;

 private:
  struct Order {
    Board board;
    std::string paper;
    bool trial = false;
    friend bool operator==(const Order&, const Order&) = default;
  };
  void run();
  static PrintedPages print(const Order& order, const Cancel& cancel);

  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<Order> asked_;
  bool waiting_ = false, busy_ = false, ending_ = false;
  Cancel cancel_;
  std::function<void()> wake_;
  std::shared_ptr<const PrintedPages> made_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
