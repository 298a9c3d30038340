// Every step of the client's build, called by Maven. A step whose inputs have not changed is skipped: the hash of its
// inputs is kept in node_modules/.stamps, which goes with node_modules.
import { spawn, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { chromium } from './chromium.mjs'
import { startPortal } from './portal.mjs'

process.chdir(join(dirname(fileURLToPath(import.meta.url)), '..'))

const OUT = 'target/classes/META-INF/resources'
const STAMPS = 'node_modules/.stamps'
const API = '../docs/reference/openapi.json'
const TYPES = 'src/api/schema.d.ts'
const CONFIG = readdirSync('.').filter((f) =>
  /\.config\.ts$|^(package(-lock)?|tsconfig|biome)\.json$/.test(f),
)
const SCRIPTS = ['build/maven.mjs', 'build/chromium.mjs', 'build/portal.mjs']
/** What a first visit loads before any page may weigh this much, compressed, in bytes (script only). */
const FIRST_LOAD_BUDGET = 60_000

function run(command, ...args) {
  const { status, error } = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1' },
  })
  if (error) console.error(error.message)
  if (status !== 0) process.exit(status ?? 1)
}
const node = (script, ...args) => run(process.execPath, `node_modules/${script}`, ...args)

function files(path) {
  if (!existsSync(path)) return []
  if (!statSync(path).isDirectory()) return [path]
  return readdirSync(path)
    .sort()
    .flatMap((name) => files(join(path, name)))
}

function once(step, inputs, outputs, work) {
  const hash = createHash('sha256').update(process.version)
  for (const file of inputs.flatMap(files)) hash.update(file).update('\0').update(readFileSync(file))
  const now = hash.digest('hex')
  const stamp = join(STAMPS, step)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now && outputs.every((o) => existsSync(o))) return
  rmSync(stamp, { force: true })
  console.log(`web: ${step}`)
  work()
  mkdirSync(STAMPS, { recursive: true })
  writeFileSync(stamp, now)
}

/** The script and style that the start page needs, followed through static imports. */
function checkSize() {
  const chunks = JSON.parse(readFileSync(join(OUT, 'client-files.json'), 'utf8'))
  const seen = new Set()
  const follow = (key) => {
    if (seen.has(key)) return
    seen.add(key)
    for (const next of chunks[key].imports ?? []) follow(next)
  }
  for (const [key, chunk] of Object.entries(chunks)) if (chunk.isEntry) follow(key)
  const bytes = [...seen].reduce(
    (sum, key) => sum + gzipSync(readFileSync(join(OUT, chunks[key].file)), { level: 9 }).length,
    0,
  )
  console.log(
    `web: first load ${(bytes / 1000).toFixed(1)} kB of script, compressed; at most ${FIRST_LOAD_BUDGET / 1000}`,
  )
  if (bytes > FIRST_LOAD_BUDGET) {
    console.error(
      'web: the first load is over its budget; move what only some pages need into their own chunks',
    )
    process.exit(1)
  }
}

const install = () =>
  once(
    'install',
    ['package.json', 'package-lock.json', '.npmrc'],
    ['node_modules/.package-lock.json'],
    () => {
      rmSync(STAMPS, { recursive: true, force: true })
      run(
        process.platform === 'win32' ? 'npm.cmd' : 'npm',
        'ci',
        '--prefer-offline',
        '--no-audit',
        '--no-fund',
      )
    },
  )

/** Not the blocking kind: the portal's output must go on being read. */
function browserTests(settings) {
  return new Promise((done) => {
    spawn(process.execPath, ['node_modules/@playwright/test/cli.js', 'test', ...process.argv.slice(3)], {
      stdio: 'inherit',
      env: { ...process.env, CHROMIUM: chromium(), ...settings },
    }).on('exit', (status) => done(status ?? 1))
  })
}

/** The types of everything that travels, from the portal's own description, which a test of the portal keeps true. */
const api = () =>
  once('api', [API, 'package-lock.json', ...SCRIPTS], [TYPES], () =>
    node(
      'openapi-typescript/bin/cli.js',
      API,
      '-o',
      TYPES,
      '--export-type',
      '--root-types',
      '--root-types-no-schema-prefix',
    ),
  )

const steps = {
  build() {
    install()
    api()
    this.check()
    once('bundle', [...CONFIG, ...SCRIPTS, 'src', 'public', 'index.html'], [`${OUT}/index.html`], () => {
      node('vite/bin/vite.js', 'build', '--logLevel', 'warn')
      checkSize()
    })
  },
  check() {
    once('check', [...CONFIG, ...SCRIPTS, 'src', 'test', 'e2e', 'public', 'index.html'], [], () => {
      node('@typescript/native/bin/tsc', '-p', '.')
      node('@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.')
    })
  },
  test() {
    install()
    api()
    once('unit', [...CONFIG, ...SCRIPTS, 'src', 'test', 'public'], [], () => node('vitest/vitest.mjs', 'run'))
  },
  // Against the packaged portal that PORTAL_JAR names, or against one that runs already at BASE_URL.
  async e2e() {
    install()
    const jar = process.env.PORTAL_JAR
    const portal = jar ? await startPortal(jar) : null
    let status = 1
    try {
      status = await browserTests(portal ? { BASE_URL: portal.address } : {})
    } finally {
      await portal?.stop()
    }
    process.exitCode = status
  },
  chromium() {
    console.log(chromium())
  },
}

const step = process.argv[2]
if (!steps[step]) {
  console.error(`web: unknown step ${step}; one of ${Object.keys(steps).join(', ')}`)
  process.exit(2)
}
await steps[step]()
