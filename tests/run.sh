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
if [[ -n $(lacking) && $(id -u) -eq 0 ]] && command -v apt-get >/dev/null; then
  apt-get update -qq || true
  for package in $(lacking); do install "$package" || true; done
  # Not every Debian has the shell as a package of its own.
  if [[ $(lacking) == chromium-headless-shell ]]; then install chromium || true; fi
fi
if [[ -n $(lacking) ]]; then
  echo "The tests need these packages: $(lacking | xargs)" >&2
  echo "Install them, on Debian with: sudo apt-get install $(lacking | xargs)" >&2
  exit 1
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

# Neither needs what the other makes, and each keeps one core alone.
{ npm run build && compile; } &
build=$!
npm run lint
wait "$build"
export COMPILED=1
exec npx vitest run --config tests/vitest.config.ts "$@"
