#include "adapters/in/calendar/clock_text.hpp"

#include <date/date.h>

#include <sstream>

namespace floatwright {

std::optional<WrittenTime> written_time_by(const std::string& form, std::string_view text) {
  std::istringstream in{std::string{text}};
  in.imbue(std::locale::classic());
  date::local_seconds local{};
  std::string zone_name;
  constexpr std::chrono::minutes kNone{1 << 20};
  std::chrono::minutes east = kNone;
  date::from_stream(in, form.c_str(), local, &zone_name, &east);
  if (in.fail() || in.peek() != std::istringstream::traits_type::eof()) return std::nullopt;
  const auto year = date::year_month_day{date::floor<date::days>(local)}.year();
  if (year < date::year{1800} || year > date::year{2200}) return std::nullopt;
  return WrittenTime{.local = Instant{local.time_since_epoch()},
                     .east = east == kNone ? std::nullopt : std::optional<Period>{east}};
}

bool has_hours(std::string_view form) {
  for (std::size_t at = form.find('%'); at != std::string_view::npos && at + 1 < form.size();
       at = form.find('%', at + 2)) {
    const std::size_t letter = form[at + 1] == 'E' || form[at + 1] == 'O' ? at + 2 : at + 1;
    if (letter < form.size() && std::string_view{"HITRrcX"}.find(form[letter]) != std::string_view::npos) return true;
  }
  return false;
}

bool gives_back_its_times(const std::string& form) {
  using namespace std::chrono_literals;
  const date::local_seconds moment = date::local_days{date::year{2026} / 11 / 23} + 17h + 45min;
  const date::local_seconds wanted = has_hours(form) ? moment : date::local_seconds{date::floor<date::days>(moment)};
  std::ostringstream out;
  out.imbue(std::locale::classic());
  const std::string zone_name = "UTC";
  constexpr std::chrono::seconds kGreenwich{0};
  date::to_stream(out, form.c_str(), moment, &zone_name, &kGreenwich);
  const auto back = written_time_by(form, out.str());
  return back && back->local.time_since_epoch() == wanted.time_since_epoch();
}

}  // namespace floatwright
