#!/bin/sh
# Installs the Debian packages of config/packages.txt that are missing. Works as root and with sudo, asks nothing, and is
# done in a second when nothing is missing. Leaves nothing behind but the packages.
set -eu
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
wanted=$(grep -v '^#' "$here/packages.txt")

missing=
for package in $wanted; do
  state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
  [ "$state" = installed ] || missing="$missing $package"
done
[ -n "$missing" ] || exit 0

as_root=
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null 2>&1 || {
    echo "floatwright set-up: these packages are missing and there is neither root nor sudo to install them:$missing" >&2
    exit 1
  }
  as_root="sudo -n"
fi
echo "floatwright set-up: installing$missing" >&2
log=$(mktemp)
trap 'rm -f "$log"' EXIT
install() {
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get -o Dpkg::Use-Pty=0 install -y -qq --no-install-recommends $missing
}
# A package list from an earlier day may name versions that are gone: look again before installing.
{ $as_root apt-get -qq update && install; } >"$log" 2>&1 || {
  echo "floatwright set-up: apt-get could not install the packages; what it said:" >&2
  tail -n 20 "$log" >&2
  exit 1
}
# The tests start a web server of their own; the one that the package may have started for the machine is not wanted.
case " $missing " in
  *" nginx-light "*)
    if [ -d /run/systemd/system ]; then $as_root systemctl disable --quiet --now nginx >/dev/null 2>&1 || true; fi ;;
esac
