import { expect, test } from '@playwright/test'
import { printed } from './paper.ts'
import { signIn } from './session.ts'

test.skip(({ viewport }) => (viewport?.width ?? 0) < 1000, 'paper has one width')

test('a decision prints on two sheets, each with its title block', async ({ page }) => {
  await signIn(page, 'principal')
  for (const house of ['H1']) {
    await page.goto(`/houses/${house}/decisions/D31`)
    await expect(page.getByRole('heading', { name: 'Approvals' })).toBeVisible()
    await expect(page.locator('.proof-paper')).toHaveCount(1)
    await page.waitForLoadState('networkidle')
    const code = (await page.locator('.title-block dd').nth(3).textContent())!.replace(/\s/g, '')
    const sheets = await printed(page)
    expect(sheets).toHaveLength(2)
    for (const sheet of sheets) {
      expect(sheet).toContain('Recordasof')
      expect(sheet).toContain(`Copycode${code}`)
    }
    expect(sheets[1]).toContain('Chosenandapproved')
    expect(sheets[1]).toContain('Cautions')
  }
})
