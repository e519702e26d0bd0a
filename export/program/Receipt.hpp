#pragma once

/// What export and trial say when a folder is made.

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "rules/Finding.hpp"

namespace sagitta {

/// A folder that was made, or left as it was.
struct Receipt {
  std::string board, folder;  ///< as the command line names them
  std::size_t files = 0;
  std::uintmax_t bytes = 0;
  std::vector<Finding> findings;
  bool unchanged = false;  ///< the folder held all of it already
};

/// How a receipt is told.
struct ReceiptStyle {
  bool json = false;
  bool quiet = false;  ///< the findings are left out
};

/// Prints the findings that say stop or look to the error output, and a line with the folder, its files and the number
/// of such findings to the output; as JSON {board, folder, files, bytes, stops, looks, unchanged}.
void print_receipt(const Receipt& receipt, const ReceiptStyle& style);

/// {board, folder, files, bytes, stops, looks, unchanged}.
nlohmann::ordered_json receipt_json(const Receipt& receipt);

/// Whether a finding says stop; prints those to the error output, and that nothing was written.
bool refused_for_stops(const std::vector<Finding>& findings);

}  // namespace sagitta
