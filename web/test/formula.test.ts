import { describe, expect, test } from 'vitest'
import { setFormula } from '../src/parts/formula.ts'

/** Below the line in [], above it in {}, quantities between slashes. */
const set = (text: string) =>
  setFormula(text)
    .map((p) => (p.set === 'sub' ? `[${p.text}]` : p.set === 'sup' ? `{${p.text}}` : p.text))
    .join('')

const symbols = (text: string) =>
  setFormula(text)
    .filter((p) => p.symbol)
    .map((p) => p.text)

describe('an equation', () => {
  test('sets an index below the line, whether a figure, letters or written with a mark', () => {
    expect(set('Q = Q50 (Δp / 50 Pa)^n')).toBe('Q = Q[50] (Δp / 50 Pa){n}')
    expect(set('P = ṁ cp (Tsup − Tout)')).toBe('P = ṁ c[p] (T[sup] − T[out])')
    expect(set('ṁ1 T1')).toBe('ṁ[1] T[1]')
    expect(set('S·(Q/Q_high)²')).toBe('S·(Q/Q[high])²')
    expect(set('sd,in > ΣC, ACH50 in E779')).toBe('s[d,in] > ΣC, ACH[50] in E779')
    expect(set('ρin/ρout, ΔpL')).toBe('ρ[in]/ρ[out], Δp[L]')
  })

  test('raises what is raised, alone or in brackets', () => {
    expect(set('(μ/μ0)^(2n − 1)')).toBe('(μ/μ[0]){2n − 1}')
    expect(set('(1 − 2.25577e-5·Z)^5.2559')).toBe('(1 − 2.25577e-5·Z){5.2559}')
    expect(set('M^(5/4)/2')).toBe('M{5/4}/2')
    expect(set('C4·T²')).toBe('C[4]·T²')
  })

  test('leaves words, units, functions and names of standards as they are', () => {
    for (const plain of [
      'where an altitude is given',
      'over ice: ',
      'kJ/kg',
      'ISO 9972: ',
      '64/Re below',
      'fan power · price',
    ]) {
      expect(set(plain)).toBe(plain)
    }
    expect(set('ln pws = 1')).toBe('ln p[ws] = 1')
    expect(symbols('Σ ṁ, for an opening with a duct')).toEqual(['ṁ'])
    expect(symbols('branch of t*: water')).toEqual(['t'])
  })

  test('loses nothing but its marks', () => {
    const text = 'C = [P·a_inf·C_out + (1 − η_v)·a_vent]/(a_inf + k);  Q_rec = f·Q_high^(1/2n) ≥ √3'
    expect(
      setFormula(text)
        .map((p) => p.text)
        .join(''),
    ).toBe(text.replace(/_|\^\(1\/2n\)/g, (m) => (m === '_' ? '' : '1/2n')))
  })
})
