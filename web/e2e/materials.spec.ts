import { expect, test } from '@playwright/test'
import { expectClean, signIn, units } from './session.ts'

test('an own material is added from its data sheet, found by a word, and offered no longer', async ({
  page,
}, info) => {
  test.slow()
  await signIn(page, 'designer')
  await page.goto('/calculations')
  await page.getByRole('link', { name: 'Materials', exact: true }).click()
  await expect(page.getByText('Plywood, softwood', { exact: true })).toBeVisible()

  await page.getByText('Add your own').click()
  await units(page, 'SI')
  await page.getByRole('button', { name: 'Add the material' }).click()
  await expect(page.getByText('This is needed.').first()).toBeVisible()
  const name = `Moss board ${info.project.name}`
  await page
    .getByRole('textbox', { name: /^Short name/ })
    .fill(`moss-board-${info.project.name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`)
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill(name)
  await page.getByRole('textbox', { name: /^Conductivity/ }).fill('0.043')
  await page.getByRole('textbox', { name: /^Source of the values/ }).fill('data sheet of March 2026')
  await page.getByLabel('How well the source was seen').selectOption('SEEN')
  await expectClean(page)
  await page.getByRole('button', { name: 'Add the material' }).click()
  await expect(page.getByRole('status').filter({ hasText: 'is offered as own-moss-board' })).toBeVisible()

  await page.getByLabel('Find by word').fill(name)
  await page.locator('summary').filter({ hasText: name }).click()
  await expect(page.getByRole('cell', { name: '0.043' })).toBeVisible()
  await expect(page.getByRole('cell', { name: 'data sheet of March 2026' })).toBeVisible()
  await expectClean(page)
  await page.getByRole('button', { name: 'Offer it no longer' }).click()
  await expect(page.getByText('None of the firm’s own has these words.')).toBeVisible()
})
