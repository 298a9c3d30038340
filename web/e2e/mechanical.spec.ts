import { expect, type Page, test } from '@playwright/test'
import { expectClean, PHOTO, signIn } from './session.ts'

/** The retest of 12 May: induced pressure in Pa and flow in m³/h, fan out and fan in. */
const OUT = [
  [-59.6, 339],
  [-51.8, 310],
  [-45.1, 284],
  [-37.6, 252],
  [-31.2, 221],
  [-24.1, 187],
  [-16.9, 147],
] as const
const IN = [
  [60.2, 355],
  [51.7, 315],
  [45.5, 290],
  [38.3, 258],
  [30.5, 227],
  [23.9, 189],
  [17.0, 150],
] as const

async function type(page: Page, name: string, value: number | string) {
  await page.locator(`input[name="${name}"]`).fill(String(value))
}

async function inSi(page: Page) {
  await page.locator('.who button').first().click()
  await page.locator('input[name="units"][value="SI"]').check({ force: true })
  await page.keyboard.press('Escape')
}

test('a tightness test is typed, kept and compared with its design on both volumes', async ({ page }) => {
  await signIn(page, 'mechanical')
  await page.goto('/houses/H2/setting-to-work/tightness')
  await inSi(page)
  await expect(page.locator('main')).toContainText('0.48')
  const form = page.locator('.measure')
  await form.getByText('the air layer, before insulation').click()
  await form.getByText('as-left, what stays').click()
  for (const [name, points] of [
    ['depressurisation', OUT],
    ['pressurisation', IN],
  ] as const) {
    await type(page, `${name}.baselineBeforePa`, 0)
    await type(page, `${name}.baselineAfterPa`, 0)
    for (const [i, [pressure, flow]] of points.entries()) {
      await type(page, `${name}.steps[${i}].pressurePa`, pressure)
      await type(page, `${name}.steps[${i}].airflowM3PerS`, flow)
    }
  }
  await type(page, 'taken.weather.windMPerS', 1)
  await type(page, 'taken.weather.outdoorC', 12)
  await type(page, 'taken.weather.indoorC', 19)
  await form.getByLabel('Kind').fill('calibrated fan, two-channel gauge')
  await form.getByLabel('Serial number').fill('F-12')
  await form.getByLabel('Calibrated on').fill('2026-03-02')
  await type(page, 'taken.instrument.flowAccuracyFraction', 3)
  await type(page, 'taken.instrument.pressureAccuracyFraction', 1)
  await type(page, 'taken.instrument.pressureAccuracyPa', 0.25)
  await form.locator('input[type="file"]').setInputFiles(PHOTO)
  await expect(form.getByRole('img', { name: 'Photo 1' })).toBeVisible()
  await form.getByRole('button', { name: 'Keep and compare' }).click()
  await expect(form.getByRole('status')).toContainText('Kept.')
  const compared = page.getByRole('region', { name: 'Design, as-found, as-left' })
  await expect(compared).toContainText('0.44')
  const sheet = await (await page.request.get('/api/v1/houses/H2/setting-to-work/tightness')).json()
  expect(sheet.measurements[0].sent.taken.photos).toHaveLength(1)
  await expect(compared).toContainText('On net air volume')
  await expect(compared).toContainText('On volume with floor depth')
  await expect(compared).toContainText('0.40')
  await expect(compared).toContainText('0.48')
  const plot = page.getByRole('img', { name: /Flow through the envelope against pressure/ })
  await expect(plot).toContainText(/(de)?pressurised|fan (in|out)/)
  await expect(plot.locator('circle.open-mark')).toHaveCount(OUT.length)
  await expect(plot.locator('rect.open-mark')).toHaveCount(IN.length)
  await expectClean(page)
})

test('a number that is none is refused beside its field and nothing typed is lost', async ({ page }) => {
  await signIn(page, 'mechanical')
  await page.goto('/houses/H3/setting-to-work/house-pressure')
  await type(page, 'restBeforePa[0]', 'three')
  await type(page, 'restBeforePa[1]', -0.4)
  await page.getByRole('button', { name: 'Keep and compare' }).click()
  await expect(page.getByRole('alert')).toContainText('Not kept.')
  await expect(page.locator('input[name="restBeforePa[0]"]')).toBeFocused()
  await expect(page.locator('input[name="restBeforePa[1]"]')).toHaveValue('-0.4')
  await expectClean(page)
})

test('on a phone large keys type below zero and change the units of what is typed', async ({ page }, {
  project,
}) => {
  test.skip(project.name !== 'phone', 'the keys are for fingers')
  await signIn(page, 'mechanical')
  await page.goto('/houses/H3/setting-to-work/house-pressure')
  await inSi(page)
  await page.locator('input[name="restBeforePa[0]"]').focus()
  const keys = page.getByRole('group', { name: 'Keys' })
  await keys.getByRole('button', { name: 'minus' }).click()
  await keys.getByRole('button', { name: '2', exact: true }).click()
  await keys.getByRole('button', { name: 'point' }).click()
  await keys.getByRole('button', { name: '6', exact: true }).click()
  await expect(page.locator('input[name="restBeforePa[0]"]')).toHaveValue('−2.6')
  await page.locator('input[name="working.hoodM3PerS"]').focus()
  for (const k of ['4', '8', '9']) await keys.getByRole('button', { name: k, exact: true }).click()
  await keys.getByRole('button', { name: 'cfm, °F' }).click()
  await expect(page.locator('input[name="working.hoodM3PerS"]')).toHaveValue(/^287\.8/)
  await expect(page.locator('input[name="restBeforePa[0]"]')).toHaveValue('−2.6')
  await inSi(page)
  await expectClean(page)
})
