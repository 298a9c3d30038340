import { expect, test } from '@playwright/test'
import { expectClean, signIn } from './session.ts'

test('the consultant sees the one house that is shared with him', async ({ page }) => {
  await signIn(page, 'consultant')
  await page.goto('/houses')
  await expect(page.locator('h1')).toHaveText('One house is shared with you.')
  await expect(page.getByRole('link', { name: 'H1 Saddle Spruce' })).toBeVisible()
  await expectClean(page)
  await page.goto('/houses/H2')
  await expect(page.getByRole('alert').first()).toContainText('Not found')
  await page.goto('/houses/H1/record/air')
  await expect(page.getByText('This account reads the record')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Save', exact: true })).toHaveCount(0)
  await expectClean(page)
})

test('the consultant submits a second opinion that rests on the values he saw', async ({ page }, info) => {
  await signIn(page, 'consultant')
  await page.goto('/houses/H1/record')
  await page.goto('/houses/H1/proofs')
  const title = `Second opinion with altitude density, ${info.project.name}`
  await page.getByRole('button', { name: 'Submit' }).click()
  await expect(page.getByRole('alert')).toContainText('Give at least one number')
  await page.getByLabel('A second opinion on').selectOption({ label: 'Make-up air' })
  await page.getByLabel('Title').fill(title)
  await page.getByLabel(/^House pressure \(/).fill('2.0')
  await page.getByLabel('Method').fill('ISO 9972 power law, density of 2350 m')
  await page.getByLabel('Evidence').fill('Same flows, mass balance at the local density.')
  await page.getByLabel('Reason', { exact: true }).fill('Asked by the principal')
  await page.getByRole('button', { name: 'Submit' }).click()
  await expect(page.getByRole('status').filter({ hasText: 'is kept as issue' })).toBeVisible()
  await page.getByRole('link', { name: title }).click()
  await expect(page.locator('h1')).toContainText('2.0')
  await expect(page.getByText('ISO 9972 power law')).toBeVisible()
  await expectClean(page)
})
