import { expect, type Page, test } from '@playwright/test'
import { expectClean, signIn, units } from './session.ts'

/** Every layer of it has a material of the library. */
const ROOF = '/houses/H1/walls/roof'

async function ask(page: Page, years: string) {
  const form = page.locator('.run-form')
  if (!(await form.isVisible())) await page.getByText('Compute years', { exact: true }).click()
  const weather = form.getByLabel('Weather', { exact: true })
  // the house may have its weather year on the record; else the first that is kept
  if ((await weather.inputValue()) === '') await weather.selectOption({ index: 1 })
  await form.getByLabel(/^Years/).fill(years)
  await form.getByRole('button', { name: 'Compute the years' }).click()
}

test('a run over years shows how far it is, and can be cancelled', async ({ page }, info) => {
  test.slow()
  test.skip(info.project.name !== 'desktop', 'computes for a while, once for all sizes')
  await signIn(page, 'designer')
  await page.goto(ROOF)
  await ask(page, '10')
  const far = page.getByRole('progressbar')
  await expect(far).toBeVisible()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect(far).toHaveCount(0)
  const runs = await (await page.request.get('/api/v1/houses/H1/simulations')).json()
  expect(runs.items[0].state).toBe('CANCELLED')
})

test('a finished run has its verdict, the room left in each layer, and the wall on any day', async ({
  page,
}, info) => {
  test.slow()
  test.skip(info.project.name !== 'desktop', 'computes for a while, once for all sizes')
  await signIn(page, 'designer')
  await page.goto(ROOF)
  await units(page, 'SI')
  await ask(page, '2')
  const room = page.getByRole('region', { name: 'Room left to the limit' })
  await expect(room).toBeVisible({ timeout: 60_000 })
  await expect(room.getByRole('row').filter({ hasText: 'plywood' })).toContainText('%')
  // the finding of the sheet is now that of the years
  await expect(page.locator('h1')).not.toContainText('outdoors')
  const drawn = page.getByRole('img', { name: /Roof, deep rafters on / })
  await expect(drawn.locator('[data-strip="water"] path.red')).toHaveCount(1)
  // a day is picked by keys and by its date, and the drawing is of that day
  const strip = page.getByRole('slider', { name: /Day of the last year/ })
  await strip.focus()
  await page.keyboard.press('Home')
  const first = await page.locator('.tape label b').textContent()
  await page.keyboard.press('ArrowRight')
  await expect(page.locator('.tape label b')).not.toHaveText(first!)
  const date = page.getByLabel('by date')
  await date.fill(`${(await date.inputValue()).slice(0, 4)}-02-14`)
  await expect(page.locator('.tape label b')).toHaveText('14 Feb')
  await expect(page.getByRole('img', { name: /Roof, deep rafters on 14 Feb/ })).toBeVisible()
  await expectClean(page)
})
