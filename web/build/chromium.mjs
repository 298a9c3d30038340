// Finds the browser for the tests; installs Debian's where that is possible, else says what to install.
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
]

function find() {
  return [process.env.CHROMIUM, ...PLACES].find((place) => place && existsSync(place))
}

export function chromium() {
  const found = find()
  if (found) return found
  const packages = ['chromium', 'fonts-dejavu']
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    const apt = ['-o', 'DPkg::Lock::Timeout=300', '-y', '-q']
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', [...apt, 'update'], { stdio: 'inherit', env })
    spawnSync('apt-get', [...apt, 'install', '--no-install-recommends', ...packages], {
      stdio: 'inherit',
      env,
    })
    const installed = find()
    if (installed) return installed
  }
  console.error(`The browser tests need Chromium and found none. Install it (on Debian, as root:
  apt-get install -y ${packages.join(' ')}
) or set CHROMIUM to the program's path, and run again.`)
  process.exit(1)
}
