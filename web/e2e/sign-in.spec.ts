import { expect, test } from '@playwright/test'
import { expectClean, signIn } from './session.ts'

test('the sign-in page is clean, and a wrong password is refused with the reason', async ({ page }) => {
  await page.goto('/')
  await expect(page.getByRole('button', { name: 'Sign in' })).toBeVisible()
  await expectClean(page)
  await page.getByLabel('Account').fill('designer')
  await page.getByLabel('Password').fill('not the password')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('alert')).toContainText('Not signed in.')
  await expect(page.getByLabel('Account')).toHaveValue('designer')
})

test('somebody signs in, stays signed in over a reload, and signs out', async ({ page }) => {
  await signIn(page, 'designer')
  await page.reload()
  await expect(page.getByRole('button', { name: /^Designer/ })).toBeVisible()
  await page.getByRole('button', { name: /^Designer/ }).click()
  await page.getByRole('button', { name: 'Sign out' }).click()
  await expect(page.getByLabel('Password')).toBeVisible()
  await page.reload()
  await expect(page.getByLabel('Password')).toBeVisible()
})

test('a sheet that does not exist says so and leads back', async ({ page }) => {
  await signIn(page, 'designer')
  await page.goto('/calculations')
  await page.evaluate(() => history.pushState(null, '', '/calculations/no-such-one'))
  await page.reload()
  await expect(page.getByRole('alert')).toContainText('no-such-one')
})
