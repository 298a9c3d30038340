import { useSignal } from '@preact/signals'
import { useContext, useMemo, useRef } from 'preact/hooks'
import { call } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import type { Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { FromHouseContext } from './fromHouse.ts'
import type { Answer, Declaration } from './types.ts'

/** A form, the answer that was computed from it last, and whether it is being computed. */
export function useCalculation<O = Row>(declaration: Declaration, initial: Row = {}) {
  const house = useContext(FromHouseContext)
  const begin = () => new Form(declaration.inputs, { ...initial, ...house?.inputs })
  // biome-ignore lint/correctness/useExhaustiveDependencies: another declaration begins a new form, another initial value does not
  const form = useMemo(begin, [declaration, house])
  const answer = useSignal<Answer<Row, O> | undefined>(undefined)
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)
  const running = useRef<AbortController | undefined>(undefined)

  async function compute() {
    const inputs = form.read()
    problem.value = undefined
    if (!inputs) {
      toFirstRefusal()
      return
    }
    running.current?.abort()
    const mine = new AbortController()
    running.current = mine
    busy.value = true
    try {
      const came = await call<Answer<Row, O>>('POST', `/calculations/${declaration.id}`, {
        body: inputs,
        signal: mine.signal,
      })
      if (running.current !== mine) return
      answer.value = came.data
      form.touched.value = false
    } catch (thrown) {
      if (mine.signal.aborted) return
      const refusal = Problem.of(thrown)
      if (refusal.status === 422 || refusal.status === 400) {
        form.refuse(refusal)
        toFirstRefusal()
      } else problem.value = refusal
    } finally {
      if (running.current === mine) busy.value = false
    }
  }
  return { form, answer, problem, busy, compute }
}

/** Takes the focus to the first refused box, once it is drawn. */
function toFirstRefusal() {
  requestAnimationFrame(() => {
    const box = document.querySelector<HTMLElement>('[aria-invalid="true"]')
    box?.closest('details')?.setAttribute('open', '')
    ;(box ?? document.querySelector<HTMLElement>('.says.whole'))?.focus()
  })
}
