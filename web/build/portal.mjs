// Starts a packaged portal with the demo houses for the browser tests, on a free port and in a folder of its own.
import { spawn } from 'node:child_process'
import { rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { resolve } from 'node:path'

const PATIENCE_MS = 240_000

function freePort() {
  return new Promise((done, fail) => {
    const server = createServer()
    server.on('error', fail)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address()
      server.close(() => done(port))
    })
  })
}

/** Answers the address and a function that stops the portal and its database. */
export async function startPortal(jar) {
  const data = resolve('target/e2e-data')
  rmSync(data, { recursive: true, force: true })
  const port = await freePort()
  const child = spawn('java', ['-jar', jar, '--oakum.demo=true'], {
    stdio: 'inherit',
    env: {
      ...process.env,
      OAKUM_DB_URL: '',
      OAKUM_DATA_DIR: data,
      OAKUM_PORT: String(port),
      OAKUM_FIRM_NAME: 'Cold Kettle House Works',
    },
  })
  const gone = new Promise((done) => child.on('exit', done))
  const stop = async () => {
    child.kill('SIGTERM')
    await gone
    rmSync(data, { recursive: true, force: true })
  }
  const address = `http://127.0.0.1:${port}`
  const end = Date.now() + PATIENCE_MS
  while (Date.now() < end && child.exitCode === null) {
    try {
      // ready once the demo is loaded: the application runner is part of starting
      const answer = await fetch(`${address}/actuator/health/readiness`)
      if (answer.ok) return { address, stop }
    } catch {
      // not listening yet
    }
    await new Promise((next) => setTimeout(next, 300))
  }
  await stop()
  throw new Error('the portal did not become ready')
}
