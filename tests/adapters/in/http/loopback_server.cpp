#include "tests/adapters/in/http/loopback_server.hpp"

#include <algorithm>
#include <arpa/inet.h>
#include <fcntl.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace floatwright {
namespace {

sockaddr_in on_loopback(int port) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  return address;
}

// A port that was free a moment ago.
int free_port() {
  const int socket_id = socket(AF_INET, SOCK_STREAM, 0);
  sockaddr_in address = on_loopback(0);
  socklen_t size = sizeof address;
  const bool ok = bind(socket_id, reinterpret_cast<sockaddr*>(&address), size) == 0 &&
                  getsockname(socket_id, reinterpret_cast<sockaddr*>(&address), &size) == 0;
  close(socket_id);
  if (!ok) throw std::runtime_error("no free port on 127.0.0.1");
  return ntohs(address.sin_port);
}

bool answers(int port) {
  const int socket_id = socket(AF_INET, SOCK_STREAM, 0);
  const sockaddr_in address = on_loopback(port);
  const bool ok = connect(socket_id, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0;
  close(socket_id);
  return ok;
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
  return text;
}

void run(const std::string& command) {
  if (std::system(command.c_str()) != 0) throw std::runtime_error("failed: " + command);
}

}  // namespace

LoopbackServer::LoopbackServer(const std::string& locations, bool tls) : tls_(tls), port_(free_port()) {
  if (access("/usr/sbin/nginx", X_OK) != 0)
    throw std::runtime_error("/usr/sbin/nginx is missing: install the package nginx-light");
  std::string name = std::filesystem::temp_directory_path() / "loopback_server_XXXXXX";
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  folder_ = name;
  std::filesystem::create_directories(root());
  std::filesystem::permissions(folder_, std::filesystem::perms::all);
  if (tls_) make_certificates();
  write_configuration(locations);
  start();
}

LoopbackServer::~LoopbackServer() {
  if (process_ > 0) {
    kill(process_, SIGTERM);
    waitpid(process_, nullptr, 0);
  }
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::string LoopbackServer::base(const std::string& host) const {
  return (tls_ ? "https://" : "http://") + host + ":" + std::to_string(port_);
}

std::string LoopbackServer::text_of(const std::string& name, int lines) const {
  for (int waits = 0;; ++waits) {
    std::ifstream in(folder_ / name);
    std::ostringstream out;
    out << in.rdbuf();
    const std::string text = out.str();
    if (std::count(text.begin(), text.end(), '\n') >= lines || waits == 5000) return text;
    usleep(1000);
  }
}

void LoopbackServer::put(const std::string& name, const std::string& bytes) const {
  std::ofstream out(root() / name, std::ios::binary);
  out << bytes;
}

void LoopbackServer::write_configuration(const std::string& locations) const {
  const std::string key = "ssl_certificate_key {FOLDER}/server.key; ssl_certificate {FOLDER}/";
  const std::string tls = tls_ ? key + "server.pem; listen 127.0.0.2:{PORT} ssl http2;" : "";
  const std::string expired = tls_ ? "server { listen 127.0.0.3:{PORT} ssl http2; " + key + "expired.pem; }" : "";
  const std::string text = R"(daemon off; master_process off; worker_processes 1; pid {FOLDER}/pid;
error_log {FOLDER}/error.log;
events { worker_connections 32; }
http {
  log_format asked '$request_method $request_uri "$http_user_agent" "$http_x_api_key" "$http_accept_encoding"';
  log_format way '$connection $server_protocol $status $request_method';
  access_log {FOLDER}/access.log asked;
  access_log {FOLDER}/ways.log way;
  client_body_temp_path {FOLDER}/body; proxy_temp_path {FOLDER}/proxy; fastcgi_temp_path {FOLDER}/fastcgi;
  uwsgi_temp_path {FOLDER}/uwsgi; scgi_temp_path {FOLDER}/scgi;
  types { application/geo+json json; text/html html; }
  gzip_types application/geo+json; gzip_min_length 1;
  server { listen 127.0.0.1:{PORT}{SSL}; root {ROOT}; )" +
                           tls + "\n" + locations + "\n} " + expired + "}\n";
  std::ofstream out(folder_ / "nginx.conf");
  out << replaced(replaced(replaced(replaced(replaced(text, "{BASE}", base()), "{ROOT}", root().string()), "{FOLDER}",
                                    folder_.string()),
                           "{PORT}", std::to_string(port_)),
                  "{SSL}", tls_ ? " ssl http2" : "");
}

void LoopbackServer::make_certificates() const {
  const std::string in_folder = "cd '" + folder_.string() + "' && ";
  run(in_folder +
      "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -days 2 -subj '/CN=Test authority' "
      "-keyout ca.key -out ca.pem 2>openssl.log");
  run(in_folder +
      "openssl req -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes -subj '/CN=127.0.0.1' -keyout server.key "
      "-out server.csr 2>>openssl.log");
  const auto sign = [&](const std::string& name, const std::string& host, const std::string& days) {
    run(in_folder + "echo subjectAltName=IP:" + host + " > names && openssl x509 -req -in server.csr -CA ca.pem " +
        "-CAkey ca.key -CAcreateserial -days " + days + " -extfile names -out " + name + " 2>>openssl.log");
  };
  sign("server.pem", "127.0.0.1", "2");
  sign("expired.pem", "127.0.0.3", "-1");
}

void LoopbackServer::start() {
  const std::string configuration = (folder_ / "nginx.conf").string(), log = (folder_ / "start.log").string();
  process_ = fork();
  if (process_ == 0) {
    prctl(PR_SET_PDEATHSIG, SIGTERM);  // a crashed test leaves no server behind
    const int out = open(log.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    dup2(out, STDERR_FILENO);
    execl("/usr/sbin/nginx", "nginx", "-c", configuration.c_str(), "-e", log.c_str(), static_cast<char*>(nullptr));
    _exit(127);
  }
  for (int tries = 0; tries < 200; ++tries) {
    if (answers(port_)) return;
    if (waitpid(process_, nullptr, WNOHANG) == process_) break;
    poll(nullptr, 0, 25);
  }
  std::ifstream said(log);
  std::ostringstream why;
  why << said.rdbuf();
  throw std::runtime_error("nginx did not start: " + why.str());
}

}  // namespace floatwright
