#pragma once

/// Whether a hand-off folder is already what an export would make.

#include <filesystem>

#include "package/ExportOrder.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// True when the folder was made by this version of the program from the same board, the same drawings and neck's file
/// and the same order, and every file in it is as it was written. What cannot be read is not up to date. Throws
/// FolderError for a drawing that can no longer be read.
bool is_up_to_date(const std::filesystem::path& folder, const PreparedBoard& ready, const ExportOrder& order);

}  // namespace sagitta
