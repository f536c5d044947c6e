#pragma once
// Letters leave: what a run needs to send, the day's letter by way of the outbox, and the test letter of check.
#include <chrono>
#include <filesystem>

#include "adapters/cli/kinds.hpp"
#include "adapters/in/files/configuration.hpp"
#include "adapters/out/mail/deliver.hpp"

namespace floatwright {

struct Post {
  MailSettings settings;
  MailServer server;
  std::filesystem::path outbox;
};

// The "mail" of settings.json, or what to write there: failure 78.
[[nodiscard]] Result<MailSettings> mail_settings(const Configuration& configuration);

// With the password out of FLOATWRIGHT_MAIL_PASSWORD, else its file. Failure 78 where a user has none, 66 where the file
// can't be read, 73 where there is no directory to keep letters in.
[[nodiscard]] Result<Post> post(const Configuration& configuration);

// Sends what waits in the outbox, then the day's letter; tells on standard error what was not delivered. The exit code: 0,
// 75 when any letter was not, or why the letter could not be made or kept.
[[nodiscard]] int send_day(const Printed& day, const Post& post, std::chrono::year_month_day today);

// Sends a letter that says it is a test; it is not kept. 0 or 75.
[[nodiscard]] int send_test_letter(const Configuration& configuration, Instant now);

}  // namespace floatwright
