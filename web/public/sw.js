// Keeps the client itself and what a site page last read, so that both open without signal. Changes never pass here:
// they wait in the page's own outbox.
const SHELL = 'oakum-shell-1'
const READ = 'oakum-read-1'
const KEPT_READS = /^\/api\/v1\/(me|houses(\/[^/]+)?(\/(cover-checks|clocks|loose-ends)(\/[^/]+)?)?)$/

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(SHELL)
      .then(async (cache) => {
        await cache.add(new Request('/', { cache: 'reload' }))
        await cache.addAll(await everyFile())
      })
      .then(() => self.skipWaiting()),
  )
})

/** The pages' chunks, so that one opens without signal that was never opened before; the build lists them. */
async function everyFile() {
  const chunks = await (await fetch('/client-files.json', { cache: 'no-cache' })).json()
  const names = Object.values(chunks).flatMap((c) => [c.file, ...(c.css ?? [])])
  return [...new Set(names)].map((name) => `/${name}`)
}

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((n) => n !== SHELL && n !== READ).map((n) => caches.delete(n))),
      )
      .then(() => self.clients.claim()),
  )
})

self.addEventListener('message', (event) => {
  // somebody signs out: nothing they read stays on the device
  if (event.data === 'forget') event.waitUntil(caches.delete(READ))
})

/** From the network, and kept; from what was kept where there is no network. */
async function fresh(request, name, key) {
  const cache = await caches.open(name)
  try {
    const answer = await fetch(request)
    if (answer.ok) await cache.put(key, answer.clone())
    return answer
  } catch (error) {
    const kept = await cache.match(key)
    if (kept) return kept
    throw error
  }
}

/** A file whose name carries its hash never changes. */
async function keptFirst(request) {
  const cache = await caches.open(SHELL)
  const kept = await cache.match(request)
  if (kept) return kept
  const answer = await fetch(request)
  if (answer.ok) await cache.put(request, answer.clone())
  return answer
}

self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  if (request.method !== 'GET' || url.origin !== location.origin) return
  if (request.mode === 'navigate' && !url.pathname.startsWith('/api/'))
    event.respondWith(fresh(request, SHELL, '/'))
  else if (url.pathname.startsWith('/assets/')) event.respondWith(keptFirst(request))
  else if (KEPT_READS.test(url.pathname)) event.respondWith(fresh(request, READ, request))
})
