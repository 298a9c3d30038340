import { expect, test } from '@playwright/test'
import { expectClean, signIn } from './session.ts'

test('the owner reads in one sentence how the house is, what to do, and who looked', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/houses/H3/owner')
  await expect(page.getByRole('heading', { level: 1 })).toContainText(
    'Your house is dry, warm and breathing well.',
  )
  await expect(page.getByRole('heading', { level: 1 })).toContainText('filter is filling early')
  await expect(page.locator('main')).toContainText('sanded')
  await expect(page.getByRole('heading', { name: 'Is there anything you should do?' })).toBeVisible()
  await page.getByText('shut off the water', { exact: true }).click()
  await expect(page.locator('.how-to')).toContainText('quarter turn')
  await expect(page.getByRole('heading', { name: 'Who looked in the last 30 days' })).toBeVisible()
  await expect(page.locator('.stop')).toContainText('call from outside')
  await expectClean(page)
})

test('the owner sees the own house and no other', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/houses/H2/owner')
  await expect(page.getByRole('alert').first()).toBeVisible()
  await expect(page.locator('main')).not.toContainText('dry, warm')
})
