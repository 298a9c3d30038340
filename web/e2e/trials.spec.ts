import { expect, type Page, test } from '@playwright/test'
import { signIn, units } from './session.ts'

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

test('trials stand beside the run, and it is kept as a proof', async ({ page }, info) => {
  test.slow()
  test.skip(info.project.name !== 'desktop', 'computes for a while, once for all sizes')
  await signIn(page, 'designer')
  await page.goto(ROOF)
  await units(page, 'SI')
  const room = page.getByRole('region', { name: 'Room left to the limit' })
  await page.waitForLoadState('networkidle')
  if (!(await room.isVisible())) await ask(page, '1')
  await expect(room).toBeVisible({ timeout: 60_000 })
  await page.locator('summary', { hasText: 'Trials side by side' }).click()
  await page.getByLabel('What is other').selectOption('layers[rafters].thicknessM')
  await page.getByLabel('Thickness in the trial').fill('300')
  await page.getByRole('button', { name: 'Add this trial' }).click()
  await page.getByRole('button', { name: 'Compute them side by side' }).click()
  const table = page.getByRole('region', { name: 'Trials side by side' })
  await expect(table.getByRole('row').filter({ hasText: '300' })).toContainText(/Passes|Fails|Not proven/, {
    timeout: 90_000,
  })
  await page.getByLabel('Reason').fill('Shows that the roof dries')
  await page.getByRole('button', { name: 'Keep as a proof' }).click()
  await expect(page.getByRole('link', { name: 'See the proof' })).toBeVisible({ timeout: 60_000 })
})
