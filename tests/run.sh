#!/usr/bin/env bash
# Installs everything and runs all checks: packages, lint, build, tests. The last lines are the test runner's.
set -euo pipefail
cd "$(dirname "$0")/.."

# Programs that only the tests need, each with the Debian package that brings it: they measure and validate
# the PDFs, and open the site in two real browsers.
needed=(pdftoppm:poppler-utils qpdf:qpdf firefox-esr:firefox-esr)

# Prints the packages of those that are not there. A whole Chromium stands in for its shell, at twice the work.
lacking() {
  for pair in "${needed[@]}"; do command -v "${pair%%:*}" >/dev/null || echo "${pair##*:}"; done
  command -v chromium-headless-shell >/dev/null || command -v chromium >/dev/null || echo chromium-headless-shell
}
install() {
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$1" >/dev/null
}
# Not every Debian has the shell as a package of its own.
install_lacking() {
  apt-get update -qq || true
  for package in $(lacking); do install "$package" || true; done
  if [[ $(lacking) == chromium-headless-shell ]]; then install chromium || true; fi
}
stop_if_lacking() {
  [[ -n $(lacking) ]] || return 0
  echo "The tests need these packages: $(lacking | xargs)" >&2
  echo "Install them, on Debian with: sudo apt-get install $(lacking | xargs)" >&2
  exit 1
}

# The tests alone need them: the rest does not wait for their download.
installing=
if [[ -n $(lacking) && $(id -u) -eq 0 ]] && command -v apt-get >/dev/null; then
  install_lacking &
  installing=$!
else
  stop_if_lacking
fi

npm ci --no-audit --no-fund

# What is dear and many tests need, in a folder that only they use: the sources compiled, in place of compiling each as
# it is asked for, where the browser's scripts lie as they do in `dist`; and the site of the demo, nested and with spaces
# in its name, with the store that it left.
compile() {
  rm -rf compiled
  npx tsc -p tests/tsconfig.compiled.json
  ln -s ../dist/scripts compiled/scripts
  XDG_CACHE_HOME=$PWD/compiled/cache node dist/cli/main.js build --out "compiled/a stick/our guides"
}

# Neither needs what the other makes, and each keeps one core alone for as long.
{ npm run build && compile && npm run style; } &
build=$!
npm run types
wait "$build"
if [[ -n $installing ]]; then wait "$installing" || true; fi
stop_if_lacking
export COMPILED=1
exec npx vitest run --config tests/vitest.config.ts "$@"
