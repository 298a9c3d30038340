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

test('an assembly is edited layer by layer; its drawing and what is wrong with it follow', async ({
  page,
}, info) => {
  test.slow()
  test.skip(info.project.name !== 'desktop', 'changes the record of the house, once for all sizes')
  await signIn(page, 'designer')
  await page.goto('/houses/H1/record/enclosure')
  await units(page, 'SI')
  await page.locator('summary', { hasText: 'Wall, split insulation' }).first().click()
  const drawing = page.getByRole('img', { name: 'Wall, split insulation, as it is typed' })
  await expect(drawing).toBeVisible()
  const layers = page.getByRole('list', { name: 'Layers of Wall, split insulation' })
  await expect(layers.getByRole('listitem')).toHaveCount(9)
  const uValue = page.locator('.looked').first()
  await expect(uValue).toContainText(/0\.13\d\s*W/)
  // thicker wool: the drawing and the U-value follow
  await layers.locator('summary', { hasText: 'mineral wool' }).click()
  await layers
    .getByLabel(/^Thickness/)
    .filter({ visible: true })
    .fill('200')
  await expect(drawing).toContainText('200')
  await expect(uValue).toContainText(/0\.11\d\s*W/)
  // a layer more, from the library, moved inward and given a role
  await page.getByRole('button', { name: 'Add a layer outside' }).first().click()
  await expect(layers.getByRole('listitem')).toHaveCount(10)
  const fresh = layers.getByRole('listitem').last()
  await fresh.getByLabel('Material of the library').selectOption('polyethylene')
  await fresh.getByLabel(/^Thickness/).fill('0.2')
  await fresh.getByLabel('Drawn as').selectOption('MEMBRANE')
  await fresh.getByRole('checkbox', { name: 'vapour' }).check()
  await expect(drawing).toContainText(/10 .*olyethylene/)
  // its row stays open where it goes: next to the plywood, where it closes the wall to vapour on both sides
  for (let k = 9; k > 6; k--) {
    await layers.getByRole('listitem').nth(k).getByRole('button', { name: 'Move inward' }).click()
    await expect(drawing).toContainText(new RegExp(`${k} .*olyethylene`))
  }
  await expectClean(page)
  await expect(page.locator('.looked').first()).toContainText('0.0 to one')
  await layers.getByRole('button', { name: /^Take away .*olyethylene/ }).click()
  await expect(layers.getByRole('listitem')).toHaveCount(9)
  // saved as the other parts are; and back again
  await page.getByLabel('Reason').fill('Thicker wool, tried in a test')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect
    .poll(async () => {
      const part = await (await page.request.get('/api/v1/houses/H1/parts/enclosure')).json()
      const wall = part.document.assemblies.find((a: { id: string }) => a.id === 'wall')
      return wall.layers.find((l: { id: string }) => l.id === 'wool').thicknessM
    })
    .toBeCloseTo(0.2, 9)
  await page.goto('/houses/H1/walls/wall')
  await expect(page.getByRole('region', { name: 'Layers' })).toContainText('200')
  await page.goto('/houses/H1/record/enclosure')
  await page.locator('summary', { hasText: 'Wall, split insulation' }).first().click()
  await layers.locator('summary', { hasText: 'mineral wool' }).click()
  await layers
    .getByLabel(/^Thickness/)
    .filter({ visible: true })
    .fill('150')
  await page.getByLabel('Reason').fill('As it was before the test')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect
    .poll(async () => {
      const part = await (await page.request.get('/api/v1/houses/H1/parts/enclosure')).json()
      const wall = part.document.assemblies.find((a: { id: string }) => a.id === 'wall')
      return wall.layers.find((l: { id: string }) => l.id === 'wool').thicknessM
    })
    .toBeCloseTo(0.15, 9)
})
