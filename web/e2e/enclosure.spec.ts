import { expect, test } from '@playwright/test'
import { expectClean, signIn, units } from './session.ts'

test('a wall is reached from the section, drawn from its layers, and its day follows what is typed', async ({
  page,
}) => {
  test.slow()
  await signIn(page, 'designer')
  await page.goto('/houses/H1')
  await page.getByRole('link', { name: 'Wall, split insulation', exact: true }).click()
  const drawing = page.getByRole('img', { name: /Wall, split insulation of H1, cut level/ })
  await expect(drawing).toBeVisible()
  await units(page, 'SI')
  await expect(page.locator('h1')).toContainText(/At −25\.0\s°C outdoors/)
  await expect(drawing.locator('[data-strip="temperature"] path.red')).toHaveCount(1)
  await expect(drawing.locator('[data-strip="humidity"] path.o')).toHaveCount(1)
  const layers = page.getByRole('region', { name: 'Layers' })
  await expect(layers.getByRole('row').filter({ hasText: 'mineral wool' })).toContainText('150')
  await expect(layers.getByRole('row').filter({ hasText: 'plywood' })).toContainText('air')
  await expect(page.getByText('Upper and lower limit')).toBeVisible()
  await expectClean(page)
  // a mild day: the curve moves, and nothing that leaks condenses any more
  const curve = drawing.locator('[data-strip="temperature"] path.red')
  const before = await curve.getAttribute('d')
  await page.getByText('Another day').click()
  await page.getByLabel(/^Outdoor temperature/).fill('10')
  await expect(page.locator('h1')).toContainText(/At 10\.0\s°C outdoors nothing condenses/)
  expect(await curve.getAttribute('d')).not.toBe(before)
  await page.getByLabel(/^Outdoor temperature/).fill('900')
  await expect(page.getByText(/is above/)).toBeVisible()
})

test('every assembly of every demo house has a clean page', async ({ page }) => {
  test.slow()
  await signIn(page, 'designer')
  for (const house of ['H1', 'H2', 'H3']) {
    const part = await (await page.request.get(`/api/v1/houses/${house}/parts/enclosure`)).json()
    for (const { id, label } of part.document.assemblies) {
      await page.goto(`/houses/${house}/walls/${id}`)
      await expect(page.getByRole('img', { name: new RegExp(`${label} of ${house}`) })).toBeVisible()
      await expect(page.getByRole('alert')).toHaveCount(0)
    }
    await page.goto(`/houses/${house}/joins`)
    await expect(page.getByRole('img', { name: /line for air/ })).toBeVisible()
    await page.waitForLoadState('networkidle')
    await expectClean(page)
  }
})

test('the joins page says where each line is open, and draws the break', async ({ page }) => {
  await signIn(page, 'designer')
  await page.goto('/houses/H1/joins')
  await expect(page.locator('h1')).toHaveText('The red line is open at four places.')
  await expect(page.locator('[data-line="AIR"]')).toHaveAttribute('data-closed', 'false')
  const unnamed = page.getByRole('list', { name: 'Holes that nobody has named' })
  await expect(unnamed).toContainText('make-up air inlet: 0 of 1 named')
  await page.getByRole('radio', { name: 'water' }).check({ force: true })
  await expect(page.locator('[data-line="WATER"]')).toHaveAttribute('data-closed', 'true')
  const row = page
    .getByRole('region', { name: 'Junctions' })
    .getByRole('row')
    .filter({ hasText: 'slab edge' })
  await expect(row).toContainText('Not said')
  await expect(row.getByRole('link')).toHaveAttribute('href', '/houses/H1/cover-checks/C4')
})
