#pragma once
// A real web server on 127.0.0.1 for one test: nginx from Debian's nginx-light with its own configuration in its own
// folder, ended with the object. The test fails, and names the package, where nginx is missing.
#include <sys/types.h>

#include <filesystem>
#include <string>

namespace floatwright {

class LoopbackServer {
 public:
  // `locations`: nginx location blocks; "{ROOT}" in them stands for root(), "{BASE}" for base(). `tls`: HTTP/2, with a
  // test authority made by openssl, whose certificate is ca_file(). Then 127.0.0.2 answers with 127.0.0.1's
  // certificate, and 127.0.0.3 with its own, which has expired.
  explicit LoopbackServer(const std::string& locations, bool tls = false);
  ~LoopbackServer();
  LoopbackServer(const LoopbackServer&) = delete;
  LoopbackServer& operator=(const LoopbackServer&) = delete;

  [[nodiscard]] std::string base(const std::string& host = "127.0.0.1") const;  // "http://127.0.0.1:port", or https
  [[nodiscard]] std::filesystem::path root() const { return folder_ / "root"; }
  [[nodiscard]] std::string ca_file() const { return (folder_ / "ca.pem").string(); }
  // One line a request: method, address, the headers User-Agent, X-Api-Key and Accept-Encoding.
  // The server writes a line after its answer has left: waits (5 s at most) until so many lines are there.
  [[nodiscard]] std::string log(int requests = 0) const { return text_of("access.log", requests); }
  // The same of how it was asked: number of the connection, protocol, status, method.
  [[nodiscard]] std::string ways(int requests = 0) const { return text_of("ways.log", requests); }
  void put(const std::string& name, const std::string& bytes) const;  // under root()

 private:
  [[nodiscard]] std::string text_of(const std::string& name, int lines) const;
  void write_configuration(const std::string& locations) const;
  void make_certificates() const;
  void start();

  std::filesystem::path folder_;
  bool tls_ = false;
  int port_ = 0;
  pid_t process_ = -1;
};

}  // namespace floatwright
