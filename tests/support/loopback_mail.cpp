#include "tests/support/loopback_mail.hpp"

#include <arpa/inet.h>
#include <fcntl.h>
#include <netinet/in.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace floatwright::testing {
namespace {

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

void run_in(const std::filesystem::path& folder, const std::string& command) {
  if (std::system(("cd '" + folder.string() + "' && " + command).c_str()) != 0) throw std::runtime_error("failed: " + command);
}

}  // namespace

LoopbackMail::LoopbackMail(const MailServerWanted& wanted) {
  if (std::system("/usr/bin/python3 -c 'import aiosmtpd' 2>/dev/null") != 0)
    throw std::runtime_error("aiosmtpd is missing: install the package python3-aiosmtpd");
  std::string name = std::filesystem::temp_directory_path() / "loopback_mail_XXXXXX";
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  folder_ = name;
  if (wanted.protection != "none") make_certificates(wanted);
  const nlohmann::json asked{{"folder", folder_.string()},
                             {"protection", wanted.protection},
                             {"certificate", (folder_ / "server.pem").string()},
                             {"key", (folder_ / "server.key").string()},
                             {"login", wanted.login},
                             {"mail", wanted.mail},
                             {"rcpt", wanted.rcpt},
                             {"data", wanted.data},
                             {"end", wanted.end}};
  start(asked.dump());
}

LoopbackMail::~LoopbackMail() {
  if (process_ > 0) {
    kill(process_, SIGTERM);
    waitpid(process_, nullptr, 0);
  }
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::vector<TakenLetter> LoopbackMail::taken() const {
  std::vector<TakenLetter> all;
  for (std::size_t i = 0; std::filesystem::exists(folder_ / (std::to_string(i) + ".json")); ++i) {
    const std::string number = std::to_string(i);
    all.push_back({bytes_of(folder_ / (number + ".eml")), bytes_of(folder_ / (number + ".json"))});
  }
  return all;
}

void LoopbackMail::make_certificates(const MailServerWanted& wanted) const {
  const std::string key = "-newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes ";
  run_in(folder_, "openssl req -x509 " + key + "-days 2 -subj '/CN=Test authority' -keyout ca.key -out ca.pem 2>log");
  run_in(folder_, "openssl req " + key + "-subj '/CN=Test server' -keyout server.key -out server.csr 2>>log");
  run_in(folder_, "echo subjectAltName=DNS:" + wanted.certificate_for +
                      " > names && openssl x509 -req -in server.csr -CA ca.pem -CAkey ca.key -CAcreateserial -days " +
                      std::to_string(wanted.certificate_days) + " -extfile names -out server.pem 2>>log");
}

void LoopbackMail::start(const std::string& asked) {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  const std::string log = folder_ / "server.log";
  process_ = fork();
  if (process_ == 0) {
    prctl(PR_SET_PDEATHSIG, SIGTERM);  // a crashed test leaves no server behind
    dup2(ends[1], STDOUT_FILENO);
    dup2(open(log.c_str(), O_WRONLY | O_CREAT, 0600), STDERR_FILENO);
    execl("/usr/bin/python3", "python3", FLOATWRIGHT_SOURCE_DIR "/tests/support/loopback_mail.py", asked.c_str(),
          static_cast<char*>(nullptr));
    _exit(127);
  }
  ::close(ends[1]);
  FILE* said = fdopen(ends[0], "r");
  if (fscanf(said, "%d", &port_) != 1) throw std::runtime_error("the mail server did not start: " + bytes_of(log));
  fclose(said);
}

int silent_port() {
  const int socket_id = socket(AF_INET, SOCK_STREAM, 0);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof address;
  const bool ok = bind(socket_id, reinterpret_cast<sockaddr*>(&address), size) == 0 &&
                  getsockname(socket_id, reinterpret_cast<sockaddr*>(&address), &size) == 0;
  ::close(socket_id);
  if (!ok) throw std::runtime_error("no free port on 127.0.0.1");
  return ntohs(address.sin_port);
}

}  // namespace floatwright::testing
