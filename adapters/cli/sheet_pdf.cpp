#include "adapters/cli/sheet_pdf.hpp"

#include "engine/wording/rig_sheet.hpp"

namespace floatwright {

Result<std::string> sheet_pdf(const Printed& day) {
  PdfOptions options;
  options.paper = day.paper;
  options.made_at = day.boats.front().plan.made_at;
  std::vector<Page> pages;
  for (const BoatDay& boat : day.boats) pages.push_back(rig_sheet(boat.plan, boat.in));
  return as_pdf(pages, options);
}

}  // namespace floatwright
