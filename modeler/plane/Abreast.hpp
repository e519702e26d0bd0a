#pragma once

#include <cstddef>
#include <functional>

namespace sagitta {

/// Does the jobs 0 .. count - 1, each once, two at a time. Jobs must not write what another reads; then the outcome
/// does not depend on which runs when. What a job throws is thrown here when all have ended; the first one's is.
void abreast(int count, const std::function<void(int)>& job);

/// The same where all jobs together are over so many points of outlines that a second thread pays; else one by one.
void abreast(int count, std::size_t points, const std::function<void(int)>& job);

}  // namespace sagitta
