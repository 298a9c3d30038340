import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** The password of every account of the demo firm. */
export const PASSWORD = process.env.DEMO_PASSWORD ?? 'demo-house'

export async function signIn(page: Page, account: string) {
  await page.goto('/')
  await page.getByLabel('Account').fill(account)
  await page.getByLabel('Password').fill(PASSWORD)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.locator('header.head')).toBeVisible()
}

/** Nothing that axe finds, light and dark, and no page that moves sideways. */
export async function expectClean(page: Page) {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const { violations } = await new AxeBuilder({ page }).analyze()
    const said = violations.map((v) => `${colorScheme} ${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`)
    expect(said).toEqual([])
  }
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  expect(over).toBeLessThanOrEqual(0)
}

/** Chooses units in which the page shows its numbers, whatever the account had before. */
export async function units(page: Page, which: 'SI' | 'IP') {
  await page.locator(`input[name="page-units"][value="${which}"]`).check({ force: true })
}

/** A picture of one pixel, for places that take a photo. */
export const PHOTO = {
  name: 'wall.png',
  mimeType: 'image/png',
  buffer: Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
    'base64',
  ),
}
