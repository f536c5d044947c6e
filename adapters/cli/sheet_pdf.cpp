#include "adapters/cli/sheet_pdf.hpp"

#include "adapters/out/figure/day_drawings.hpp"
#include "engine/wording/rig_sheet.hpp"

namespace floatwright {

Result<std::string> sheet_pdf(const Printed& day) {
  PdfOptions options;
  options.paper = day.paper;
  options.made_at = day.boats.front().plan.made_at;
  std::vector<Page> pages;
  for (const BoatDay& boat : day.boats) {
    pages.push_back(rig_sheet(boat.plan, boat.in));
    options.drawings.push_back(day_drawings(boat.plan, boat.in, width_for_drawings(day.paper)));
  }
  return as_pdf(pages, options);
}

}  // namespace floatwright
