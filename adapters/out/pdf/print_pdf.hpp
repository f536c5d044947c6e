#pragma once
// Pages as a PDF that a printer takes as it is: one sheet a page, Letter or A4, black on white, no text under 13 points,
// fonts embedded, text searchable. What a sheet does not hold is left out, least vital first, and counted in words; a
// page whose vital parts alone are more than a sheet goes on over the next. Same pages and time, same bytes.
#include <string>
#include <vector>

#include "adapters/out/pdf/block_parts.hpp"
#include "adapters/result.hpp"
#include "engine/units/instant.hpp"

namespace floatwright {

enum class Paper { Letter, A4 };

struct PdfOptions {
  Paper paper = Paper::Letter;
  std::string language = "en";  // BCP 47
  Instant made_at{};            // the document's creation time
  std::vector<Drawings> drawings;  // by page, for its figures; a page without has none
};

// Width that a drawing may have to stand on the sheet, in points.
[[nodiscard]] double width_for_drawings(Paper paper);

// Failure 66 when the fonts are missing, 74 when cairo could not make the document.
[[nodiscard]] Result<std::string> as_pdf(const std::vector<Page>& pages, const PdfOptions& options);

}  // namespace floatwright
