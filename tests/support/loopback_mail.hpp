#pragma once
// A real mail server on 127.0.0.1 for one test: aiosmtpd from Debian's python3-aiosmtpd, run by loopback_mail.py, with the
// answers that the test wants; and a test authority by openssl for its certificate.
#include <sys/types.h>

#include <filesystem>
#include <string>
#include <vector>

namespace floatwright::testing {

struct MailServerWanted {
  std::string protection = "none";           // "starttls", "implicit"
  bool login = false;                        // only the user "plan" with the password "river"
  std::string certificate_for = "localhost";
  int certificate_days = 2;                  // negative: it ran out
  // Answers in turn, the last for ever; see loopback_mail.py.
  std::vector<std::string> mail{}, rcpt{}, data{}, end{};
};

struct TakenLetter {
  std::string bytes;
  std::string about;  // JSON: from, to, tls, user
};

class LoopbackMail {
 public:
  explicit LoopbackMail(const MailServerWanted& wanted = {});
  ~LoopbackMail();
  LoopbackMail(const LoopbackMail&) = delete;
  LoopbackMail& operator=(const LoopbackMail&) = delete;

  [[nodiscard]] int port() const { return port_; }
  [[nodiscard]] std::string ca_file() const { return (folder_ / "ca.pem").string(); }
  [[nodiscard]] std::vector<TakenLetter> taken() const;

 private:
  void make_certificates(const MailServerWanted& wanted) const;
  void start(const std::string& asked);

  std::filesystem::path folder_;
  int port_ = 0;
  pid_t process_ = -1;
};

// A port of 127.0.0.1 on which nobody listens.
[[nodiscard]] int silent_port();

}  // namespace floatwright::testing
