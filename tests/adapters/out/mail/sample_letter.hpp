#pragma once
#include "adapters/out/mail/letter.hpp"

namespace floatwright::testing {

inline constexpr std::chrono::year_month_day kDay{std::chrono::year{2027}, std::chrono::May, std::chrono::day{14}};

// An invented morning's letter with one picture and one sheet.
inline Letter sample_letter() {
  Letter letter;
  letter.from = "plan@example.org";
  letter.to = {"wren@example.org"};
  letter.subject = "Fri 14 May Lantern: 12 1/2 ft tip 5 in/s; 1,850 cfs";
  letter.text = "Flow 1,850 cfs, falling slowly.\nWater 47 \xC2\xB0""F.\n.\n..a line that begins with two dots\nFrom the bank.\n";
  letter.html = "<!DOCTYPE html><p>Flow 1,850 cfs</p><img src=\"" + picture_address("hydrograph") + "\" alt=\"flow\">";
  letter.pictures = {{"hydrograph", std::string{"\x89PNG\r\n\x1a\n\0bytes", 14}}};
  letter.attachments = {{"2027-05-14-sheet.pdf", "application/pdf", "%PDF-1.5\nsheet\r\n\xFF\n"}};
  letter.date = std::chrono::sys_days{kDay} + std::chrono::hours{12};
  letter.message_id = message_id(letter);
  return letter;
}

}  // namespace floatwright::testing
