import type { ComponentChildren } from 'preact'
import { print, type Unit } from '../units/quantity.ts'
import { other, system } from '../units/system.ts'

interface QuantityProps {
  /** In the unit that the field's name ends in. */
  value: number | null | undefined
  unit: Unit
  /** The step to which it is printed; 0 takes the unit's usual digits. */
  step?: number
  /** Half the width of its interval, shown as ±. */
  uncertainty?: number
  /** Where it came from, begun with computed, measured, typed by, data sheet, firm rules, code, assumed or from memory. */
  from?: ComponentChildren
  /** The other system in brackets, where readers of both habits meet. */
  both?: boolean
  /** The one figure of a page. */
  large?: boolean
}

/** A number with its unit, and where it came from on the line below. */
export function Quantity({ value, unit, step = 0, uncertainty, from, both, large }: QuantityProps) {
  if (value === null || value === undefined || !Number.isFinite(value)) {
    return (
      <>
        <span class="q">–</span>
        {from && <span class="from">{from}</span>}
      </>
    )
  }
  const shown = print(value, unit, system.value, step)
  const second = print(value, unit, other(system.value))
  return (
    <>
      <Figure text={shown.text} symbol={shown.symbol} large={large} />
      {uncertainty
        ? ` ±${print(uncertainty, { ...unit, si: { ...unit.si, offset: 0 }, ip: { ...unit.ip, offset: 0 } }, system.value, step).text}`
        : null}
      {both && second.symbol !== shown.symbol && (
        <span class="q">
          {' '}
          ({second.text}&#8239;{second.symbol})
        </span>
      )}
      {from && <span class="from">{from}</span>}
    </>
  )
}

/** A figure and its unit already worded. */
export function Figure({ text, symbol, large }: { text: string; symbol: string; large?: boolean }) {
  return (
    <span class={large ? 'q figure' : 'q'}>
      <b>{text}</b>
      {symbol && (
        <>
          &#8239;<i>{symbol}</i>
        </>
      )}
    </span>
  )
}

/** A changed number: the old one struck, the new one bold; readers hear "was … now …". */
export function Changed({
  old,
  now,
  unit,
  step = 0,
}: {
  old: number
  now: number
  unit: Unit
  step?: number
}) {
  const before = print(old, unit, system.value, step)
  return (
    <>
      <span class="was q">
        <span class="vh">was </span>
        {before.text}
      </span>{' '}
      <span class="vh">now </span>
      <Quantity value={now} unit={unit} step={step} />
    </>
  )
}
