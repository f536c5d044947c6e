#include "adapters/out/pdf/print_pdf.hpp"

#include <cairo-pdf.h>
#include <date/date.h>
#include <fmt/format.h>

#include "adapters/out/pdf/document_language.hpp"

namespace floatwright {
namespace {

constexpr double kMargin = 25.0, kTop = 18.0;  // points, at the sides and over and under; printers reach to 18

struct SheetSize {
  double width, height;  // points
};
SheetSize size_of(Paper paper) { return paper == Paper::Letter ? SheetSize{612, 792} : SheetSize{595.276, 841.890}; }

PrintedArea printed_area(Paper paper) {
  const SheetSize sheet = size_of(paper);
  return {kMargin, kTop, sheet.width - 2 * kMargin, sheet.height - 2 * kTop};
}

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

void describe(cairo_surface_t* surface, const std::vector<Page>& pages, const PdfOptions& options) {
  const date::sys_seconds made{std::chrono::floor<std::chrono::seconds>(options.made_at).time_since_epoch()};
  const std::string when = date::format("%FT%TZ", made);
  const std::string title = pages.empty() ? "" : pages.front().title;
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "floatwright");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, when.c_str());
}

void print_page(Ink& ink, const Page& page, const Drawings& drawings, Paper paper) {
  const PrintedArea area = printed_area(paper);
  std::vector<Part> parts = parts_of(page, drawings, area, ink);
  fit(parts, area.height, ink);
  double y = area.top;
  for (const Part& part : parts) {
    const double height = height_of(part, ink);
    if (y > area.top && y + height > area.top + area.height) {
      cairo_show_page(ink.pen());
      y = area.top;
    }
    draw(part, ink, y);
    y += height;
  }
  cairo_show_page(ink.pen());
}

}  // namespace

double width_for_drawings(Paper paper) { return printed_area(paper).width; }

Result<std::string> as_pdf(const std::vector<Page>& pages, const PdfOptions& options) {
  if (!font_is_there(kFamily)) return tl::unexpected(font_missing("PDF"));
  std::string bytes;
  const SheetSize sheet = size_of(options.paper);
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, sheet.width, sheet.height));
  describe(surface.get(), pages, options);
  {
    const Pen pen(cairo_create(surface.get()));
    Ink ink(pen.get());
    for (std::size_t i = 0; i < pages.size(); ++i)
      print_page(ink, pages[i], i < options.drawings.size() ? options.drawings[i] : Drawings{}, options.paper);
  }
  cairo_surface_finish(surface.get());
  const cairo_status_t status = cairo_surface_status(surface.get());
  if (status != CAIRO_STATUS_SUCCESS)
    return tl::unexpected(Failure{fmt::format("PDF: {}", cairo_status_to_string(status)), kExitWriteFailed});
  return with_language(std::move(bytes), options.language);
}

}  // namespace floatwright
