#!/usr/bin/env bash
# Packs the service for a workshop's machine, which needs neither the .NET SDK nor git: an archive and a Debian package, both holding the
# runtime. Needs what run.sh needs, and dpkg-deb. Usage: .config/pack.sh [VERSION]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
. .config/machine.sh

need_dotnet
command -v dpkg-deb >/dev/null || stop "dpkg-deb is not here: install the package dpkg."
version=${1:-$(date -u +%Y.%m.%d)}
[[ $version =~ ^[0-9][0-9A-Za-z.+~]*$ ]] || stop "'$version' is no version: write one such as 2026.11.29."
case $(uname -m) in
  x86_64) machine=linux-x64 debian=amd64 ;;
  aarch64) machine=linux-arm64 debian=arm64 ;;
  *) stop "packed for x86_64 and aarch64 only, this machine is $(uname -m)." ;;
esac

out=$PWD/artifacts/pack
root=$out/root
rm -rf "$out"
mkdir -p "$root/opt/traceability" "$root/DEBIAN"

say "Building for $machine"
publish=(dotnet publish src/Traceability.Web --configuration Release --runtime "$machine" --self-contained true
  --output "$root/opt/traceability" --nologo --verbosity quiet -p:RunAnalyzers=false)
quietly "${publish[@]}" -p:PublishReadyToRun=true || quietly "${publish[@]}" || stop "the build failed."
cp src/Traceability.Web/OPERATING.md "$root/opt/traceability/"

say "Packing"
tar -C "$root/opt" -czf "$out/traceability-$version-$machine.tar.gz" traceability
cat >"$root/DEBIAN/control" <<CONTROL
Package: traceability
Version: $version
Architecture: $debian
Maintainer: the workshop <root@localhost>
Depends: postgresql (>= 15), libc6, libicu72 | libicu74 | libicu76 | libicu78
Description: production traceability for small workshops of handbuilt condenser microphones
 Records every step of every unit against its serial, enforces stage gates and prints birth certificates.
CONTROL
cat >"$root/DEBIAN/postinst" <<'POSTINST'
#!/bin/sh
set -e
id traceability >/dev/null 2>&1 || useradd --system --home-dir /var/lib/traceability --shell /usr/sbin/nologin traceability
/opt/traceability/Traceability.Web install >/dev/null
if [ -d /run/systemd/system ]; then
  systemctl daemon-reload
  systemctl enable traceability >/dev/null
  systemctl restart traceability
fi
POSTINST
cat >"$root/DEBIAN/prerm" <<'PRERM'
#!/bin/sh
set -e
if [ -d /run/systemd/system ]; then systemctl stop traceability || true; fi
PRERM
chmod 755 "$root/DEBIAN/postinst" "$root/DEBIAN/prerm"
dpkg-deb --root-owner-group --build "$root" "$out/traceability_${version}_$debian.deb" >"$notes" 2>&1 || stop "dpkg-deb failed: $(tail -n 1 "$notes")"
rm -rf "$root"
say "Packed:"
ls -sh "$out"
