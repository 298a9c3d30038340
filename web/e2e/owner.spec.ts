import { expect, test } from '@playwright/test'
import { expectClean, PHOTO, signIn } from './session.ts'

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

test('the owner tells what is seen, with a photo and one of the offered times', async ({ page, browser }, {
  project,
}) => {
  await signIn(page, 'owner')
  await page.goto('/houses/H3/owner')
  const tell = page.locator('form.tell')
  await expect(page.locator('main')).toContainText('Danger first')
  await tell.getByRole('button', { name: 'Send it to the office' }).click()
  await expect(tell.getByRole('alert')).toContainText('Say in a few words')
  const words = `A drip under the kitchen sink (${project.name} ${Date.now()})`
  await tell.getByLabel('What do you see, hear or smell?').fill(words)
  await tell.getByLabel(/Where in the house/).fill('kitchen')
  await tell.locator('input[type="file"]').setInputFiles(PHOTO)
  await expect(tell.getByRole('img', { name: 'Photo 1' })).toBeVisible()
  const time = tell.getByRole('radio', { name: /in the afternoon/ }).first()
  await time.check()
  await expectClean(page)
  await tell.getByRole('button', { name: 'Send it to the office' }).click()
  await expect(tell.getByRole('status')).toContainText('We answer by')
  const told = page.getByRole('listitem').filter({ hasText: words })
  await expect(told).toContainText('in the afternoon')
  await expect(told.getByRole('img', { name: 'Photo 1' })).toBeVisible()
  const reports = await (await page.request.get('/api/v1/houses/H3/reports')).json()
  const kept = reports.items.find((r: { what: string }) => r.what === words)
  expect(kept).toMatchObject({ inHouse: 'kitchen', slot: { half: 'AFTERNOON' } })
  expect(kept.photos).toHaveLength(1)

  // the office reads it on the same page and answers
  const office = await browser.newPage()
  await signIn(office, 'office')
  await office.goto('/houses/H3/owner')
  const asked = office.getByRole('listitem').filter({ hasText: words })
  await asked.getByLabel('Answer', { exact: true }).fill('We come and look at the trap.')
  await asked.getByRole('button', { name: 'Send the answer' }).click()
  await expect(asked.locator('blockquote')).toContainText('We come and look at the trap.')
  await page.reload()
  await expect(told).toContainText('We come and look at the trap.')
})
