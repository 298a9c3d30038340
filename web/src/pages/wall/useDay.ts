import { effect, useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import { call } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import type { Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { askOf, DAY, type Day, type DayOutput, dayOf, type Placed } from '../../wall/day.ts'
import type { Answer, Declaration } from '../calculation/types.ts'

const PAUSE_MS = 250

/** The air on both sides of an assembly as somebody types it, and what the portal computes for it. */
export function useDay(declaration: Declaration, placed: Placed | undefined, initial: Row) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the form begins once with what the record says
  const form = useMemo(
    () =>
      new Form(
        declaration.inputs.filter((f) => f.name === 'climate'),
        { climate: initial },
      ),
    [declaration],
  )
  const day = useSignal<Day | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  useEffect(() => {
    if (!placed) return
    let running: AbortController | undefined
    let timer: ReturnType<typeof setTimeout> | undefined
    const stop = effect(() => {
      const climate = form.value.value.climate as Row
      clearTimeout(timer)
      timer = setTimeout(() => {
        running?.abort()
        running = new AbortController()
        void compute(climate, running.signal)
      }, PAUSE_MS)
    })
    async function compute(climate: Row, signal: AbortSignal) {
      if (!form.read()) return
      const ask = askOf(placed!, climate)
      try {
        const [whole, cut] = await Promise.all(
          [ask.whole, ask.cut].map((body) =>
            call<Answer<Row, DayOutput>>('POST', `/calculations/${DAY}`, { body, signal }),
          ),
        )
        day.value = dayOf(placed!, climate, whole!.data, cut!.data)
        problem.value = undefined
      } catch (thrown) {
        if (signal.aborted) return
        const refusal = Problem.of(thrown)
        if (refusal.status === 422 && refusal.fields.some((f) => f.field.startsWith('climate')))
          form.refuse(refusal)
        else problem.value = refusal
      }
    }
    return () => {
      stop()
      clearTimeout(timer)
      running?.abort()
    }
  }, [placed, form, day, problem])
  return { form, day, problem }
}
