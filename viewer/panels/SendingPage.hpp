#pragma once

#include <memory>

#include "document/Document.hpp"
#include "document/Settings.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Results.hpp"
#include "jobs/Sending.hpp"
#include "panels/SendingForm.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What the export's page works with.
struct SendingPage {
  Ui& ui;
  const Document& document;
  Settings& settings;
  SendingForm& form;
  const Results& results;
  SendingState sending;                       ///< how far the folder is written
  std::shared_ptr<const PrintedPages> pages;  ///< as they will print; null while they are being made
};

}  // namespace sagitta::viewer
