import { effect, type Signal, signal } from '@preact/signals'
import { editable, fromShown, parseNumber, shownBy, type Unit } from '../../units/quantity.ts'
import { type System, system } from '../../units/system.ts'

interface Entry {
  text: string
  /** A number has a unit; a text has none. */
  unit?: Unit
}

/** What is being typed on a sheet, by the name that the portal gives each field; numbers stay as typed until sent. */
export class Entries {
  readonly all: Signal<Map<string, Entry>> = signal(new Map())
  /** The field that the keypad writes into. */
  readonly active = signal<{ name: string; unit: Unit } | undefined>(undefined)
  readonly stop: () => void
  #habit: System

  constructor() {
    this.#habit = system.peek()
    this.stop = effect(() => {
      const now = system.value
      if (now !== this.#habit) this.#convert(this.#habit, now)
      this.#habit = now
    })
  }

  /** Other units were chosen: what is typed is said in them. */
  #convert(old: System, now: System) {
    const next = new Map(this.all.peek())
    for (const [name, { text, unit }] of next) {
      const typed = parseNumber(text)
      if (unit && text.trim() !== '' && !Number.isNaN(typed))
        next.set(name, { text: editable(fromShown(typed, shownBy(unit, old)), unit, now), unit })
    }
    this.all.value = next
  }

  text(name: string): string {
    return this.all.value.get(name)?.text ?? ''
  }

  type(name: string, text: string, unit?: Unit) {
    this.all.value = new Map(this.all.peek()).set(name, { text, unit })
  }

  /** A number in SI; null where nothing is typed; NaN where it is none. */
  number(name: string): number | null {
    const entry = this.all.peek().get(name)
    if (!entry?.unit || entry.text.trim() === '') return null
    const typed = parseNumber(entry.text)
    return Number.isNaN(typed) ? Number.NaN : fromShown(typed, shownBy(entry.unit, system.peek()))
  }

  /** The numbers of `name[0]`, `name[1]`, …; empty places are left out. */
  numbers(name: string, count: number): number[] {
    return Array.from({ length: count }, (_, i) => this.number(`${name}[${i}]`)).filter((v) => v !== null)
  }

  /** Names of numbers that cannot be read as one. */
  unreadable(): string[] {
    return [...this.all.peek().keys()].filter((name) => Number.isNaN(this.number(name)))
  }

  filled(prefix: string): boolean {
    return [...this.all.peek()].some(([name, e]) => name.startsWith(prefix) && e.text.trim() !== '')
  }

  clear(prefix: string) {
    this.all.value = new Map([...this.all.peek()].filter(([name]) => !name.startsWith(prefix)))
  }
}
