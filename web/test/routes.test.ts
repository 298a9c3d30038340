import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { ROUTES } from '../src/shell/routes.ts'

const PORTAL_LIST = '../backend/portal/src/main/java/oakum/portal/http/ClientPages.java'

test('the portal answers every address of the client with its page', () => {
  const served = [...readFileSync(PORTAL_LIST, 'utf8').matchAll(/"(\/[^"]*)"/g)].map((m) => m[1])
  const wanted = ROUTES.map((r) => r.path.replace(/:(\w+)/g, '{$1}'))
  expect(served).toEqual(expect.arrayContaining(wanted))
})
