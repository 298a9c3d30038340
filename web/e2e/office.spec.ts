import { expect, test } from '@playwright/test'
import { expectClean, PHOTO, signIn } from './session.ts'

test('twelve windows make rounds, and the shelf says what to order', async ({ page }) => {
  await signIn(page, 'office')
  await page.goto('/rounds')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('leaves on Wed 20 May')
  await expect(page.getByRole('img', { name: /Filter windows of 12 filters/ })).toBeVisible()
  const stock = page.getByRole('region', { name: 'Stock' })
  await expect(stock.getByRole('row', { name: /16×25×4/ })).toContainText('order 2')
  await expect(stock.getByRole('row', { name: /20×20×5/ })).toContainText('order 2')
  await expect(stock.getByRole('row', { name: /20×25×5/ })).toContainText('enough')
  await expectClean(page)
})

test('the bend in a filter is explained by what the record knows', async ({ page }) => {
  await signIn(page, 'office')
  await page.goto('/filters/H3/deep')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('fills early')
  const main = page.locator('main')
  await expect(main).toContainText(/sanded/)
  await expect(main).toContainText('0.080')
  await expect(main).toContainText('0.024')
  await expect(main).toContainText('6 June 2026')
  await expectClean(page)
})

test('a round is booked, its sheets print, and a filter that reads too high keeps its visit open', async ({
  page,
}, { project }) => {
  await signIn(page, 'office')
  await page.goto('/rounds')
  const place = project.name === 'phone' ? 'North' : 'Valley'
  await page.getByRole('button', { name: new RegExp(`^Book ${place}`) }).click()
  const booked = page.getByRole('region', { name: 'Booked' }).getByRole('listitem').filter({ hasText: place })
  await booked.getByRole('link', { name: 'Visit sheets' }).click()
  await expect(page.locator('.visit-sheet').first()).toContainText('take along')
  await expectClean(page)
  await page.locator('.one-visit h2 a').first().click()
  const form = page.locator('form.measure')
  await expect(form).toBeVisible()
  await form.getByLabel(/as-found, high flow/).fill('27')
  await form.getByLabel(/as-found, low flow/).fill('9')
  await form.getByLabel(/as-left, high flow/).fill('40')
  await form.getByLabel(/as-left, low flow/).fill('16')
  const size = await page.locator('.visit-sheet dd b').first().textContent()
  await form.getByLabel(/Size as printed/).fill((size ?? '').replace(/^\d+\s×\s/, '').replaceAll('×', 'x'))
  await form.locator('input[type="file"]').first().setInputFiles(PHOTO)
  await expect(form.getByRole('img', { name: 'Photo 1' })).toBeVisible()
  await form.getByRole('button', { name: 'Close the visit' }).click()
  await expect(page.getByRole('alert')).toContainText('Not closed.')
  await expect(page.getByRole('alert')).toContainText('15 %')
  await expect(form.getByLabel(/as-left, high flow/)).toHaveValue('40')
})

test('a calendar address is made and answers with the care calendar', async ({ page }) => {
  await signIn(page, 'office')
  await page.goto('/rounds')
  await page.getByRole('button', { name: 'Make my address' }).click()
  const address = await page.getByLabel('The address, shown once').inputValue()
  const feed = await page.request.get(new URL(address).pathname)
  expect(await feed.text()).toContain('BEGIN:VCALENDAR')
})

test('a year of readings is drawn from what the portal gathered, and a shower raises nothing', async ({
  page,
}) => {
  await signIn(page, 'office')
  await page.goto('/houses/H3/readings?sensor=bath.rh')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('nothing was raised')
  await expect(page.locator('.persistence')).toContainText('The rule waits 3 h: nothing was raised.')
  await expect(page.locator('.series-box canvas')).toBeVisible()
  const asked = page.waitForRequest((r) => r.url().includes('/readings?') && r.url().includes('from='))
  await page.getByText('week', { exact: true }).click()
  await asked
  await expect(page.locator('main')).toContainText(/each \d+ minutes/)
  await page.getByText('Show as a table').click()
  await expect(page.locator('.series table')).toBeVisible()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download as CSV' }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/^H3-bath\.rh-.*\.csv$/)
  // hundreds of rows cost minutes to check and are all alike
  await page.getByText('Show as a table').click()
  await expectClean(page)
})

test('a file with a value that cannot be is taken in, and says what was refused and why', async ({
  page,
}) => {
  await signIn(page, 'office')
  await page.goto('/houses/H3/readings')
  await page.getByLabel(/A logger's file/).setInputFiles({
    name: 'night.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('at,living.rh\n2024-08-01T00:00:00Z,0.41\n2024-08-01T00:05:00Z,41\n'),
  })
  await page.getByRole('button', { name: 'Take it in' }).click()
  await expect(page.locator('.batch')).toContainText('Kept, with refusals')
  await expect(page.getByRole('region', { name: 'What was refused' })).toContainText('41')
})
