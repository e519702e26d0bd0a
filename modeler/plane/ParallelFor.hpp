#pragma once

/// Independent jobs run side by side on the machine's cores.

#include <cstddef>
#include <functional>

namespace sagitta {

/// Calls job(0) .. job(count - 1), each once. The calling thread works too; other threads join it as far as
/// `parallel_threads` allows, calls inside of jobs included, so the number of threads stays bounded however deep calls
/// nest. Jobs must not write what another reads; then the result does not depend on the number of threads. When jobs
/// throw, the exception of the one with the least index is thrown here after all have ended.
void parallel_for(int count, const std::function<void(int)>& job);

/// The same where all jobs together work on enough points of outlines that starting a thread pays; else one by one.
void parallel_for(int count, std::size_t points, const std::function<void(int)>& job);

/// The most threads that work at one time, calling threads included; at least 1. As many as the machine has cores
/// unless set.
int parallel_threads();
void set_parallel_threads(int count);

}  // namespace sagitta
