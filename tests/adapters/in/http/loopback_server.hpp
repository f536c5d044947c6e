#pragma once
// A real web server on 127.0.0.1 for one test: nginx from Debian's nginx-light with its own configuration in its own
// folder, ended with the object. The test fails, and names the package, where nginx is missing.
#include <sys/types.h>

#include <filesystem>
#include <string>

namespace floatwright {

class LoopbackServer {
 public:
  // `locations`: nginx location blocks; "{ROOT}" in them stands for root(), "{BASE}" for base(). `tls`: with a test
  // authority made by openssl, whose certificate is ca_file().
  explicit LoopbackServer(const std::string& locations, bool tls = false);
  ~LoopbackServer();
  LoopbackServer(const LoopbackServer&) = delete;
  LoopbackServer& operator=(const LoopbackServer&) = delete;

  [[nodiscard]] std::string base() const;  // "http://127.0.0.1:port", or https
  [[nodiscard]] std::filesystem::path root() const { return folder_ / "root"; }
  [[nodiscard]] std::string ca_file() const { return (folder_ / "ca.pem").string(); }
  // One line a request: method, address, the headers User-Agent, X-Api-Key and Accept-Encoding.
  // The server writes a line after its answer has left: waits (5 s at most) until so many lines are there.
  [[nodiscard]] std::string log(int requests = 0) const;
  void put(const std::string& name, const std::string& bytes) const;  // under root()

 private:
  void write_configuration(const std::string& locations) const;
  void make_certificates() const;
  void start();

  std::filesystem::path folder_;
  bool tls_ = false;
  int port_ = 0;
  pid_t process_ = -1;
};

}  // namespace floatwright
