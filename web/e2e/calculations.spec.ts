import { expect, type Page, test } from '@playwright/test'
import { expectClean, signIn, units } from './session.ts'

test.beforeEach(async ({ page }) => {
  await signIn(page, 'designer')
})

async function fillExample(page: Page, place = 0) {
  await page.getByText('Fill in a worked example').click()
  await page.locator('.examples li button').nth(place).click()
}

async function compute(page: Page) {
  const answer = page.waitForResponse(
    (r) => r.request().method() === 'POST' && r.url().includes('/calculations/'),
  )
  await page.getByRole('button', { name: 'Compute' }).click()
  return (await answer).status()
}

test('the list leads to every calculation, and each draws its form', async ({ page }) => {
  await page.goto('/calculations')
  const links = page.locator('.calculations a')
  await expect(links.first()).toBeVisible()
  await expectClean(page)
  const addresses = await links.evaluateAll((all) => all.map((a) => a.getAttribute('href')!))
  expect(addresses.length).toBeGreaterThan(5)
  for (const address of addresses) {
    await page.goto(address)
    await expect(page.getByRole('button', { name: 'Compute' })).toBeVisible()
  }
})

test('moist air: two known quantities give the others, and the units change without another question', async ({
  page,
}) => {
  await page.goto('/calculations/moist-air-state')
  await units(page, 'SI')
  await page.getByRole('textbox', { name: /^Dry bulb/ }).fill('21')
  await page.getByRole('textbox', { name: /^Relative humidity/ }).fill('40')
  await page.getByRole('textbox', { name: /^Altitude/ }).fill('0')
  expect(await compute(page)).toBe(200)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('wet a surface at 6.9')
  await units(page, 'IP')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('wet a surface at 44.4')
  await expectClean(page)
})

test('a refused value stays, is named beside its field, and takes the focus', async ({ page }) => {
  await page.goto('/calculations/moist-air-state')
  await units(page, 'SI')
  const dryBulb = page.getByRole('textbox', { name: /^Dry bulb/ })
  await dryBulb.fill('400')
  await page.getByRole('textbox', { name: /^Relative humidity/ }).fill('4o')
  await page.getByRole('button', { name: 'Compute' }).click()
  await expect(dryBulb).toBeFocused()
  await expect(dryBulb).toHaveValue('400')
  await expect(dryBulb).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByText('400 °C is above 90 °C.')).toBeVisible()
  await expect(page.getByText('“4o” is no number.')).toBeVisible()
  await expectClean(page)
})

test('a refusal that only the portal can know reaches the page in its words', async ({ page }) => {
  await page.goto('/calculations/moist-air-state')
  await units(page, 'SI')
  await page.getByRole('textbox', { name: /^Dry bulb/ }).fill('20')
  await page.getByRole('textbox', { name: /^Altitude/ }).fill('0')
  expect(await compute(page)).toBe(422)
  await expect(page.getByText(/Two quantities fix a state; 1 are given/)).toBeVisible()
})

test('tightness: both directions in one plot, a hole as big, and the same numbers as a table', async ({
  page,
}) => {
  await page.goto('/calculations/tightness-test')
  await fillExample(page)
  expect(await compute(page)).toBe(200)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('50')
  const plot = page.getByRole('img', { name: /logarithmic/ })
  await expect(plot.locator('circle')).toHaveCount(10)
  await expect(plot.locator('rect')).toHaveCount(10)
  await expect(page.getByText('The same leak on both volumes')).toBeVisible()
  await page.getByText('Show as a table').click()
  await expect(page.getByText('Corrected readings, pressurised')).toBeVisible()
  await expectClean(page)
})

test('house pressure: every combination, worst first, and the finding in the heading', async ({ page }) => {
  await page.goto('/calculations/house-pressure')
  await fillExample(page)
  expect(await compute(page)).toBe(200)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('below outdoors')
  const table = page.getByRole('region', { name: 'Every combination of what can run' })
  const pressures = await table.locator('tbody tr td:nth-child(3)').allInnerTexts()
  const numbers = pressures.map((t) => Number(t.replace('−', '-').replace(/[^\d.-]/g, '')))
  expect(numbers.length).toBeGreaterThan(1)
  expect([...numbers].sort((a, b) => b - a)).toEqual(numbers)
  await expectClean(page)
})

test('filters: options beside each other on a desk, one under the other on a phone, each with its reason', async ({
  page,
}, info) => {
  await page.goto('/calculations/filter-sizing')
  await fillExample(page)
  expect(await compute(page)).toBe(200)
  const phone = info.project.name === 'phone'
  await expect(page.locator('.abreast')).toBeVisible({ visible: !phone })
  await expect(page.locator('.ways')).toBeVisible({ visible: phone })
  await expect(
    page
      .getByText(/Clean drop .* (passes|fails)\./)
      .locator('visible=true')
      .first(),
  ).toBeVisible()
  await expectClean(page)
})

test('a calculation opened from a house begins with its record, and says so', async ({ page }) => {
  await page.goto('/houses/H3/proofs')
  await page.getByRole('link', { name: 'Calculations filled from this house' }).click()
  await expect(page).toHaveURL(/\/houses\/H3\/calculations$/)
  await expectClean(page)
  await page.getByRole('main').getByRole('link', { name: 'Make-up air' }).first().click()
  await expect(page.locator('main')).toContainText("Filled from “Make-up air” of H3, with today's record.")
  await expect(page.locator('main')).toContainText('from the record, air')
  await expect(page.locator('main')).toContainText('Range hood')
  await expectClean(page)
  await page.getByRole('button', { name: 'Compute', exact: true }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/\d.*Pa/)
  await expect(page.getByRole('alert')).toHaveCount(0)
})
