#include "adapters/cli/day_letter.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "adapters/cli/sheet_pdf.hpp"
#include "adapters/out/html/as_html.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/wording/morning_mail.hpp"

namespace floatwright {
namespace {

constexpr std::size_t kLongestSubject = 78;

// Cut before a byte that begins a character (RFC 3629 section 3: the others are 10xxxxxx).
std::string cut(std::string text) {
  if (text.size() <= kLongestSubject) return text;
  std::size_t end = kLongestSubject;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end);
}

// The pages of several boats are one page of the letter.
Page whole(const Printed& day) {
  Page all;
  for (const BoatDay& boat : day.boats) {
    Page page = morning_mail(boat.plan, boat.in);
    if (all.title.empty()) all.title = std::move(page.title);
    std::ranges::move(page.blocks, std::back_inserter(all.blocks));
  }
  if (day.boats.size() > 1) all.title = cut(fmt::format("{} boats. {}", day.boats.size(), all.title));
  return all;
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
  const Page page = whole(day);
  Letter letter;
  letter.from = day.mail->from;
  letter.to = day.mail->to;
  letter.subject = page.title;
  letter.text = as_text(page);
  letter.html = as_html(page);
  letter.attachments = std::move(*sheet);
  letter.date = day.boats.front().plan.made_at;
  letter.message_id = message_id(letter);
  return letter;
}

}  // namespace floatwright
