#include "adapters/cli/day_letter.hpp"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>

#include "adapters/cli/sheet_pdf.hpp"
#include "adapters/out/text/print_text.hpp"
#include "engine/wording/float_plan.hpp"

namespace floatwright {
namespace {

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
  Letter letter;
  letter.from = day.mail->from;
  letter.to = day.mail->to;
  for (const BoatDay& boat : day.boats) {
    const Page page = float_plan(boat.plan, boat.in);
    if (letter.subject.empty()) letter.subject = page.title;
    letter.text += as_text(page) + "\n";
  }
  letter.attachments = std::move(*sheet);
  letter.date = day.boats.front().plan.made_at;
  letter.message_id = message_id(letter);
  return letter;
}

}  // namespace floatwright
