#pragma once

/// The job sheet as one HTML file.

#include <map>
#include <string>

#include "jobsheet/JobSheet.hpp"

namespace sagitta {

/// Small pictures by stage: the bytes of a PNG.
using JobPictures = std::map<std::string, std::string>;

/// The sheet as one HTML file with its pictures inside, so that it can be sent and kept alone; prints on A4 or Letter.
/// A stage without a picture is named in words.
std::string job_html(const JobSheet& sheet, const JobPictures& pictures);

}  // namespace sagitta
