import { useSignal } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import { DeclaredForm } from '../../form/DeclaredForm.tsx'
import { type Field, type Path, pointer, type Row } from '../../form/field.ts'
import { Form } from '../../form/form.ts'
import { Of, Wrong } from '../../parts/Says.tsx'
import { housePath } from '../../record/record.ts'
import type { House } from '../../record/types.ts'
import { bindingsOf, type HouseInputs, type Job, YEARS } from '../../wall/run.ts'
import type { AssemblySheet } from '../../wall/types.ts'
import type { Declaration } from '../calculation/types.ts'

interface WeatherYear {
  hash: string
  place: { name: string; altitudeM?: number }
  source: string
  wholeYear: boolean
}

interface RunFormProps {
  sheet: AssemblySheet
  house: House
  declaration: Declaration
  /** Humidity indoors over outdoor cold, as the record allows it. */
  curve: { outdoorC: number; humidityFraction: number }[]
  onAsked: (job: Job) => void
}

/** What surrounds the assembly and for how long it is followed. The layers come from the record. */
export function RunForm(props: RunFormProps) {
  const { house, sheet } = props
  const years = useResource<{ items: WeatherYear[] }>('/weather-years?limit=200')
  const filled = useResource<HouseInputs>(
    `${housePath(house.id)}/calculations/${YEARS}?assembly=${encodeURIComponent(sheet.id)}`,
  )
  return (
    <Of resource={filled}>
      {(f) => <Of resource={years}>{({ items }) => <Filled {...props} filled={f} years={items} />}</Of>}
    </Of>
  )
}

function Filled({
  sheet,
  house,
  declaration,
  curve,
  onAsked,
  filled,
  years,
}: RunFormProps & { filled: HouseInputs; years: WeatherYear[] }) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the form begins once with what the record says
  const form = useMemo(
    () =>
      new Form(
        declaration.inputs.filter((f) => f.name !== 'layers'),
        startOf(filled.inputs, curve),
      ),
    [declaration, filled],
  )
  const problem = useSignal<Problem | undefined>(undefined)
  const busy = useSignal(false)

  async function start() {
    problem.value = undefined
    const typed = form.read()
    if (!typed) return
    busy.value = true
    try {
      const weather = years.find((y) => y.hash === typed.weatherHash)
      const title = `${sheet.label}, ${weather?.place.name ?? 'weather'}, ${typed.years} years`
      onAsked(
        await post<Job>(`${housePath(house.id)}/simulations`, {
          title: title.slice(0, 200),
          calculation: YEARS,
          bindings: bindingsOf(filled, typed),
        }),
      )
    } catch (thrown) {
      const refusal = Problem.of(thrown)
      if (refusal.status === 422 && refusal.fields.length > 0) form.refuse(refusal)
      else problem.value = refusal
    } finally {
      busy.value = false
    }
  }

  return (
    <form
      noValidate
      class="run-form"
      onSubmit={(e) => {
        e.preventDefault()
        void start()
      }}
    >
      <DeclaredForm
        form={form}
        extras={{
          open: (path) => form.get(path) !== undefined,
          origin: (path) => originOf(filled, form, path),
          instead: (path, field) => {
            if (field.name === 'weatherHash')
              return <Weather form={form} field={field} path={path} years={years} />
            if (field.name === 'rainLayerId' || field.name === 'leakLayerId' || field.name === 'layerId')
              return <LayerChoice form={form} field={field} path={path} sheet={sheet} />
            return undefined
          },
        }}
      />
      {problem.value && <Wrong problem={problem.value} outcome="Not started." />}
      <div class="acts">
        <button type="submit" class="b main" disabled={busy.value}>
          Compute the years
        </button>
      </div>
    </form>
  )
}

/** Begins with what the portal fills in, and with the record's humidity over outdoor cold where it has one. */
function startOf(inputs: Row, curve: { outdoorC: number; humidityFraction: number }[]): Row {
  const { layers: _, ...rest } = inputs
  const indoor: Row =
    curve.length > 0 ? { indoor: 'WINTER_CURVE', indoorCurve: curve as unknown as Row[] } : {}
  return { indoorCurve: [], wetStarts: [], ...rest, ...indoor }
}

/** Where the value of a field came from, as long as it is that one. */
function originOf(filled: HouseInputs, form: Form, path: Path): string | undefined {
  const name = String(path[0])
  if (path.length !== 1 || filled.inputs[name] === undefined) return undefined
  if (form.get(path) !== filled.inputs[name]) return 'typed here'
  const from = filled.bindings.findLast((b) => b.input === name)
  return from?.path ? 'from the record' : from?.origin
}

function Weather({
  form,
  field,
  path,
  years,
}: {
  form: Form
  field: Field
  path: Path
  years: WeatherYear[]
}) {
  const value = (form.get(path) as string | undefined) ?? ''
  const chosen = years.find((y) => y.hash === value)
  return (
    <Select
      form={form}
      field={field}
      path={path}
      options={years
        .filter((y) => y.wholeYear)
        .map((y): [string, string] => [y.hash, `${y.place.name}: ${y.source}`])}
      hint={
        chosen
          ? chosen.source
          : years.length === 0
            ? 'No weather year is kept yet; add one first.'
            : field.help
      }
    />
  )
}

function LayerChoice({
  form,
  field,
  path,
  sheet,
}: {
  form: Form
  field: Field
  path: Path
  sheet: AssemblySheet
}) {
  return (
    <Select
      form={form}
      field={field}
      path={path}
      options={sheet.layers.map((l, i): [string, string] => [l.id, `${i + 1} ${l.label}`])}
      hint={field.help}
    />
  )
}

export function Select({
  form,
  field,
  path,
  options,
  hint,
}: {
  form: Form
  field: Field
  path: Path
  options: [string, string][]
  hint?: string
}) {
  const id = `f-${pointer(path).replace(/[^\w]+/g, '-')}`
  const error = form.error(path)
  return (
    <div class={`field one${error ? ' refused' : ''}`}>
      <label for={id}>{field.label}</label>
      <div class="in">
        <select
          id={id}
          value={(form.get(path) as string | undefined) ?? ''}
          aria-describedby={`${id}-h`}
          aria-invalid={error ? 'true' : undefined}
          onChange={(e) => form.set(path, e.currentTarget.value || undefined)}
        >
          <option value="">{field.optional ? 'left out' : 'choose'}</option>
          {options.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <p class="hint" id={`${id}-h`}>
        {hint}
      </p>
      {error && (
        <p class="says" role="alert">
          <b>Refused.</b> {error}
        </p>
      )}
    </div>
  )
}
