#pragma once
// The letters that are on their way: a letter is put into the outbox before it is sent and taken out when the server has
// it, so that none is lost and none is sent twice (docs/decisions.md, "A letter whose answer is missing"). One run at a
// time sends; another waits for it. What will not be sent any more lies in "set-aside" within the outbox.
#include <filesystem>
#include <string>
#include <vector>

#include "adapters/out/mail/deliver.hpp"
#include "adapters/out/mail/outbox_letter.hpp"
#include "adapters/result.hpp"

namespace floatwright {

// Failure 73 or 74 when it can't be kept. A letter that lies there already stays as it is.
[[nodiscard]] Result<std::filesystem::path> put_in_outbox(const std::filesystem::path& outbox, const Letter& letter,
                                                          std::chrono::year_month_day day);

struct OutboxRun {
  std::vector<std::string> told;  // a sentence for each letter that was not delivered or was set aside
  bool well = true;               // false: a letter was sent and is not delivered
};

// Sends what `from` wrote, oldest first. Letters that speak of a day before `today` are set aside.
[[nodiscard]] OutboxRun send_outbox(const std::filesystem::path& outbox, const std::string& from, const MailServer& server,
                                    std::chrono::year_month_day today);

}  // namespace floatwright
