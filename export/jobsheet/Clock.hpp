#pragma once

/// Tool changes, time of cutting and material, for the first page of the job sheet.

#include <vector>

#include "jobsheet/JobTable.hpp"
#include "jobsheet/Walk.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Each time a cutter is put in: number, step, cutter. The steps are counted from 1.
JobTable tool_changes(const PreparedBoard& ready, const std::vector<WalkStep>& walk);

/// Time of cutting, step by step: length of cut, passes, minutes. Without moves between cuts and without tool changes;
/// "unknown" where a cutter gives no feed, or none is named; no rows where none gives one. Areas are cut in lines side
/// by side: pockets half a cutter apart, the radius `radius_stepover` apart.
JobTable clock_of(const PreparedBoard& ready, const std::vector<WalkStep>& walk);
inline constexpr double radius_stepover = 0.5;  ///< mm

/// Wire, sheets and blank: what the job takes of them and what is left over.
JobTable material_of(const PreparedBoard& ready);

}  // namespace sagitta
