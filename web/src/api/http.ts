import { Problem } from './problem.ts'

const BASE = '/api/v1'

export interface CallOptions {
  body?: unknown
  /** The entity tag that was read, for a change of something versioned. */
  ifMatch?: string
  /** Makes a creating call repeatable: sent again it gives the same answer. */
  idempotencyKey?: string
  signal?: AbortSignal
}

export interface Answer<T> {
  data: T
  /** The entity tag to hand back with a change. */
  etag: string | null
}

/** Called when the portal says that nobody is signed in. */
let onSignedOut: () => void = () => {}
export function whenSignedOut(act: () => void) {
  onSignedOut = act
}

function cookie(name: string): string | undefined {
  const found = document.cookie.split('; ').find((c) => c.startsWith(`${name}=`))
  return found && decodeURIComponent(found.slice(name.length + 1))
}

async function problemOf(response: Response): Promise<Problem> {
  let body: Record<string, unknown> = {}
  try {
    body = (await response.json()) as Record<string, unknown>
  } catch {
    // a proxy in between may answer with something else than problem JSON
  }
  const detail = typeof body.detail === 'string' ? body.detail : `The portal answered ${response.status}.`
  return new Problem(response.status, String(body.code ?? response.status), detail, body)
}

/**
 * One call of the portal.
 *
 * @throws Problem where it refuses or cannot be reached
 */
export async function call<T>(method: string, path: string, options: CallOptions = {}): Promise<Answer<T>> {
  const headers: Record<string, string> = { Accept: 'application/json' }
  const { body, ifMatch, idempotencyKey, signal } = options
  // a form or a file goes as it is, with its own type
  const raw = body instanceof FormData || body instanceof Blob
  if (body !== undefined && !raw) headers['Content-Type'] = 'application/json'
  if (ifMatch) headers['If-Match'] = ifMatch
  if (idempotencyKey) headers['Idempotency-Key'] = idempotencyKey
  const token = cookie('XSRF-TOKEN')
  if (token && method !== 'GET') headers['X-XSRF-TOKEN'] = token
  let response: Response
  try {
    response = await fetch(BASE + path, {
      method,
      headers,
      body: body === undefined ? undefined : raw ? body : JSON.stringify(body),
      signal,
      credentials: 'same-origin',
    })
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === 'AbortError') throw thrown
    throw new Problem(0, 'no-signal', 'The portal cannot be reached.')
  }
  if (!response.ok) {
    const problem = await problemOf(response)
    if (problem.status === 401 && path !== '/session') onSignedOut()
    throw problem
  }
  const etag = response.headers.get('ETag')
  const type = response.headers.get('Content-Type') ?? ''
  const data = response.status === 204 || !type.includes('json') ? undefined : await response.json()
  return { data: data as T, etag }
}

export const get = async <T>(path: string, signal?: AbortSignal) =>
  (await call<T>('GET', path, { signal })).data
export const post = async <T>(path: string, body?: unknown, options: CallOptions = {}) =>
  (await call<T>('POST', path, { ...options, body })).data
export const put = async <T>(path: string, body: unknown, options: CallOptions = {}) =>
  (await call<T>('PUT', path, { ...options, body })).data
export const remove = async <T = void>(path: string, options: CallOptions = {}) =>
  (await call<T>('DELETE', path, options)).data
