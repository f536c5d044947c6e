#include "adapters/cli/day_letter.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>

#include "adapters/cli/sheet_pdf.hpp"
#include "adapters/out/figure/day_drawings.hpp"
#include "adapters/out/figure/png.hpp"
#include "adapters/out/html/as_html.hpp"
#include "adapters/out/files/whole_file.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/wording/cut.hpp"
#include "engine/wording/morning_mail.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kLongestSubject = 78;  // characters
constexpr double kPictureWidth = 360.0;  // points; a phone shows it whole, its words still of a size to read
constexpr double kPixelsPerPoint = 2.0;  // sharp on a phone

// The pages of several boats are one page of the letter; each boat's pictures keep a name of their own.
struct Whole {
  Page page;
  std::vector<Picture> pictures;
};

// Draws what the page shows and nothing else, since a mail reader hangs a picture without a place at the letter's end.
Result<Written> add_boat(Whole& all, const BoatDay& boat, std::size_t number) {
  Page page = morning_mail(boat.plan, boat.in);
  if (number == 0) all.page.title = std::move(page.title);
  const Drawings drawings = day_drawings(boat.plan, boat.in, kPictureWidth);
  for (Block& block : page.blocks) {
    auto* figure = std::get_if<Figure>(&block);
    const auto drawing = figure == nullptr ? drawings.end() : drawings.find(figure->name);
    if (drawing != drawings.end()) {
      auto png = as_png(drawing->second, kPixelsPerPoint);
      if (!png) return tl::unexpected(png.error());
      if (number > 0) figure->name += fmt::format("-{}", number + 1);
      all.pictures.push_back({figure->name, std::move(*png)});
    }
    all.page.blocks.push_back(std::move(block));
  }
  return Written{};
}

Result<Whole> whole(const Printed& day) {
  Whole all;
  for (std::size_t i = 0; i < day.boats.size(); ++i) {
    if (const auto added = add_boat(all, day.boats[i], i); !added) return tl::unexpected(added.error());
  }
  if (day.boats.size() > 1) {
    all.page.title = cut_at_word(fmt::format("{} boats. {}", day.boats.size(), all.page.title), kLongestSubject);
  }
  return all;
}

std::string html_of(const Whole& all) {
  HtmlOptions options;
  for (const Picture& picture : all.pictures) options.pictures[picture.name] = picture_address(picture.name);
  return as_html(all.page, options);
}

Result<std::vector<Attachment>> sheet_of(const Printed& day) {
  if (std::ranges::all_of(day.boats, [](const BoatDay& boat) { return boat.plan.nothing; })) return std::vector<Attachment>{};
  const std::chrono::sys_days planned = day.boats.front().in.day;
  const auto name = date::format("%F", date::sys_days{planned.time_since_epoch()}) + "-sheet.pdf";
  return sheet_pdf(day).map([&](std::string pdf) { return std::vector{Attachment{name, "application/pdf", std::move(pdf)}}; });
}

}  // namespace

Result<Letter> day_letter(const Printed& day) {
  auto sheet = sheet_of(day);
  if (!sheet) return tl::unexpected(sheet.error());
  auto all = whole(day);
  if (!all) return tl::unexpected(all.error());
  Letter letter;
  letter.from = day.mail->from;
  letter.to = day.mail->to;
  letter.subject = all->page.title;
  letter.text = as_text(all->page);
  letter.html = html_of(*all);
  letter.pictures = std::move(all->pictures);
  letter.attachments = std::move(*sheet);
  letter.date = day.boats.front().plan.made_at;
  letter.message_id = message_id(letter);
  return letter;
}

}  // namespace floatwright
