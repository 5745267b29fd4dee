#!/bin/bash
# Proves on bare Debian 12, as a stranger has it, what the README and the guide promise about installing.
#   bash tests/tools/bare_root.sh FOLDER                everything
#   bash tests/tools/bare_root.sh FOLDER build tests    only the named parts
# build    the README's first command, word for word, in a root with nothing but Debian's smallest set
# tests    the README's second command, in the same root
# package  the Debian packages, made there and put into FOLDER
# install  the program's package in a root without compilers: installed, used, removed, no file left
# consume  tests/consumer built with the library's package
# Needs root and debootstrap. The mirror is the one in /etc/apt. FOLDER takes 5 GB and is yours to remove; a root that
# stands there is used again. What it mounts is gone when it ends, however it ends.
set -euo pipefail

folder=${1:?a folder to make the roots in}
shift
parts=("$@")
[ ${#parts[@]} -gt 0 ] || parts=(build tests package install consume)
if [ "$(id -u)" -ne 0 ] || ! command -v debootstrap >/dev/null; then
  echo "bare_root.sh needs root and debootstrap (apt-get install debootstrap)" >&2
  exit 1
fi
# Its own mounts and processes: nothing is left over on the machine, not even after a kill.
if [ "${in_own_space:-}" != yes ]; then
  in_own_space=yes exec unshare --mount --pid --fork --kill-child bash "$0" "$folder" "${parts[@]}"
fi
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
project=$(cd "$(dirname "$0")/../.." && pwd)

mirror() {
  { sed -n 's/^URIs: *\([^ ]*\).*/\1/p' /etc/apt/sources.list.d/*.sources
    sed -n 's/^deb \(\[[^]]*\] \)\?\([^ ]*\).*/\2/p' /etc/apt/sources.list /etc/apt/sources.list.d/*.list
  } 2>/dev/null | head -n 1
}

# This machine's package sources, its keys and the settings of its downloads; no hook of its own.
copy_apt() {
  local root=$1 file
  rm -f "$root/etc/apt/sources.list"
  for file in /etc/apt/sources.list /etc/apt/sources.list.d /etc/apt/keyrings /etc/apt/trusted.gpg.d \
    /usr/share/keyrings /etc/ssl/certs /etc/resolv.conf /etc/hosts; do
    [ -e "$file" ] || continue
    mkdir -p "$root$(dirname "$file")"
    cp -rL "$file" "$root$(dirname "$file")/" 2>/dev/null || true
  done
  for file in /etc/apt/apt.conf.d/*; do
    if grep -q Acquire "$file" && ! grep -q Invoke "$file"; then cp "$file" "$root/etc/apt/apt.conf.d/"; fi
  done
}

make_base() {
  [ ! -e "$folder/base/made" ] || return 0
  rm -rf "$folder/base"
  debootstrap --variant=minbase bookworm "$folder/base" "$(mirror)" >"$folder/base.log" 2>&1
  copy_apt "$folder/base"
  : >"$folder/base/made"
}

# root NAME: a copy of the base, where there is none yet.
root() {
  make_base
  [ -e "$folder/$1/made" ] || { rm -rf "${folder:?}/$1" && cp -a "$folder/base" "$folder/$1"; }
}

# inside NAME COMMAND: run in a root as on a machine of its own, with nothing of this one's environment.
inside() {
  local at="$folder/$1"
  mountpoint -q "$at/proc" || mount -t proc proc "$at/proc"
  mountpoint -q "$at/dev" || mount --rbind /dev "$at/dev"
  mountpoint -q "$at/sys" || mount --rbind /sys "$at/sys"
  env -i HOME=/root TERM=dumb PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin \
    DEBIAN_FRONTEND=noninteractive chroot "$at" bash -c "$2"
}

# The README's command number $1.
readme() { grep '^bash \.ci/setup' "$project/README.md" | sed -n "$1p"; }

# The files of the last commit, without git: a stranger may have them from an archive.
checkout() {
  [ ! -e "$folder/readme/project" ] || return 0
  mkdir "$folder/readme/project"
  git -C "$project" archive HEAD | tar -x -C "$folder/readme/project"
}

bare() {
  if inside "$1" 'command -v g++ || command -v cc || command -v cmake'; then
    echo "the root $1 is not bare"
    return 1
  fi
}

build() {
  root readme
  [ -e "$folder/readme/project" ] || bare readme
  checkout
  inside readme "cd /project && $(readme 1)"
}

tests() {
  root readme && checkout
  inside readme "cd /project && $(readme 2)"
}

# Every file but the records of the package tools themselves.
files_of() {
  (cd "$folder/$1" && find . -xdev \( -path ./proc -o -path ./dev -o -path ./sys -o -path ./tmp -o -path ./var/log \
    -o -path ./var/lib/dpkg -o -path ./var/lib/apt -o -path ./var/cache \) -prune -o -print) |
    grep -vx ./etc/ld.so.cache | sort
}

package() {
  root readme && checkout
  inside readme "cd /project && bash .ci/setup package && cmake -C .ci/release.cmake -S . -B .build/release &&
    cmake --build .build/release && cd .build/release && rm -f *.deb && cpack -G DEB"
  cp "$folder"/readme/project/.build/release/*.deb "$folder/"
}

# The program's package among nothing but Debian's smallest set: it brings what it needs, works, and leaves no file.
install() {
  rm -rf "$folder/plain"
  root plain
  bare plain
  inside plain 'apt-get -qq update'
  cp "$folder"/slabwright_*.deb "$folder/plain/tmp/"
  files_of plain >"$folder/before"
  inside plain 'apt-get -qq install --yes --no-install-recommends /tmp/slabwright_*.deb'
  bare plain
  inside plain 'set -e; cd /tmp; slabwright --version; slabwright
    slabwright new shop.toml --size "36 x 30 ft" --spacing "12 in" --outdoor "-12 F"
    slabwright sheets shop.toml --out cards; ls cards | grep -q html
    slabwright design /usr/share/doc/slabwright/layouts/frame-shop.toml'
  files_of plain >"$folder/with"
  grep -q /man1/slabwright-freeze.1 "$folder/with"
  inside plain 'apt-get -qq purge --yes --autoremove slabwright'
  files_of plain >"$folder/after"
  diff "$folder/before" "$folder/after"
}

# The library's package where a compiler is: a program finds it, is built with it, and says the same.
consume() {
  root readme
  cp "$folder"/slabwright*.deb "$folder/readme/tmp/"
  rm -rf "$folder/readme/tmp/consumer" "$folder/readme/tmp/told"
  cp -r "$project/tests/consumer" "$folder/readme/tmp/"
  inside readme 'set -e; cd /tmp
    apt-get -qq update
    apt-get -qq install --yes --no-install-recommends g++ cmake ninja-build ./slabwright*.deb
    cmake -G Ninja -S consumer -B told && cmake --build told
    told/consumer /usr/share/doc/slabwright/layouts/ten-lines.toml
    apt-get -qq purge --yes slabwright slabwright-dev
    left=$(find / -xdev \( -path /project -o -path /tmp -o -path /var \) -prune -o -name "*slabwright*" -print)
    [ -z "$left" ] || { echo "left behind: $left"; exit 1; }'
}

for part in "${parts[@]}"; do
  start=$SECONDS
  # Not within the condition: there bash would go on after a command that fails.
  set +e
  (set -e && "$part") >"$folder/$part.log" 2>&1
  code=$?
  set -e
  if [ $code -eq 0 ]; then
    echo "$part: ok, $((SECONDS - start)) s"
  else
    echo "$part: FAILED after $((SECONDS - start)) s, the end of $folder/$part.log:"
    tail -n 40 "$folder/$part.log"
    exit 1
  fi
done
