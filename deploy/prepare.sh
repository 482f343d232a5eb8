# What deploy/run and deploy/test share: finding or installing what they need. Sourced, not run.
# shellcheck shell=bash

say() { printf '%s\n' "$*" >&2; }

# Installs Debian packages if we may; says what is missing if we may not.
install_packages() {
  local as_root=()
  if [[ $(id -u) -ne 0 ]]; then
    if ! command -v sudo >/dev/null; then
      say "Missing: $*. Install them as root (apt-get install $*), then try again."
      return 1
    fi
    as_root=(sudo)
  fi
  if ! command -v apt-get >/dev/null; then
    say "Missing: $*. Install them with this system's package manager, then try again."
    return 1
  fi
  say "Installing: $*"
  "${as_root[@]}" apt-get update -qq >&2
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -qq --no-install-recommends "$@" >&2
}

# Whether a Java compiler of at least 17 is on the path.
have_jdk() {
  local version
  version=$(javac -version 2>&1) || return 1
  version=${version#javac }
  [[ ${version%%[.-]*} -ge 17 ]]
}

need_jdk_and_maven() {
  local missing=()
  have_jdk || missing+=(openjdk-17-jdk-headless)
  command -v mvn >/dev/null || missing+=(maven)
  if [[ ${#missing[@]} -gt 0 ]]; then
    install_packages "${missing[@]}"
  fi
}

# Whether a Node.js of at least 18, with npm, is on the path.
have_node() {
  local version
  version=$(node --version 2>/dev/null) || return 1
  version=${version#v}
  [[ ${version%%.*} -ge 18 ]] && command -v npm >/dev/null
}

# Lint and unit tests of the pages' scripts and styles. Prints what could not run, and why; fails if
# something is wrong with what ran.
test_scripts() {
  local what="  scripts and styles:"
  if ! have_node && ! { install_packages nodejs npm && have_node; }; then
    echo "$what no Node.js of at least 18 with npm"
    return 0
  fi
  (
    cd "$root/dashboard/src/test/scripts" || exit 1
    if ! npm ci --silent >&2; then
      echo "$what their tools could not be fetched (npm ci)"
      exit 0
    fi
    npm run --silent lint >&2 && npm test --silent >&2
  )
}
