import { useSignal } from '@preact/signals'
import { useEffect, useRef, useState } from 'preact/hooks'
import { call } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import type { MaterialJson, MaterialPage } from '../../api/schema.d.ts'
import { type FieldExtras, FieldsAt } from '../../form/DeclaredForm.tsx'
import { type Field, type Path, pointer, type Row } from '../../form/field.ts'
import type { Form } from '../../form/form.ts'
import { Quantity } from '../../parts/Quantity.tsx'
import { Findings } from '../../wall/Findings.tsx'
import { declared, number, symbol, thicknessText, unitOf, words } from '../../wall/say.ts'
import { drawnOf, freshId, pick, withControl } from '../../wall/typed.ts'
import type { Finding } from '../../wall/types.ts'
import { WallDrawing } from '../../wall/WallDrawing.tsx'
import { wallModel } from '../../wall/wallModel.ts'
import type { Answer, Declaration } from '../calculation/types.ts'

interface LayersEditorProps {
  form: Form
  /** The declared list of layers. */
  field: Field
  /** Where it stands: assemblies, the row, layers. */
  path: Path
}

/** May be left out, and yet what most layers are told by. */
const ALWAYS = new Set(['materialId', 'ventilation'])

/** The layers of one assembly, from inside: drawn as they are typed, and looked over at once. */
export function LayersEditor({ form, field, path }: LayersEditorProps) {
  const materials = useResource<MaterialPage>('/materials')
  const assemblyPath = path.slice(0, -1)
  const assembly = (form.get(assemblyPath) as Row | undefined) ?? {}
  const layers = (assembly.layers as Row[] | undefined) ?? []
  const model = wallModel(drawnOf(assembly))
  const thickness = unitOf(field.fields, 'thicknessM')
  const name = typeof assembly.label === 'string' && assembly.label ? assembly.label : 'Assembly'
  const error = form.error(path)
  const list = useRef<HTMLOListElement>(null)
  const move = (from: number, to: number) => {
    form.moveRow(path, from, to)
    // the row stays open where it went, and the keyboard with it
    requestAnimationFrame(() => {
      const rows = list.current?.querySelectorAll<HTMLDetailsElement>(':scope > li > details')
      const [left, there] = [rows?.[from], rows?.[to]]
      if (!left || !there) return
      left.open = there.open
      there.open = true
      there.querySelector<HTMLElement>(':scope > summary')?.focus()
    })
  }
  const extras: FieldExtras = {
    open: (p) => ALWAYS.has(String(p.at(-1))) || form.get(p) !== undefined,
    instead: (p, f) => {
      if (f.name === 'controls') return <Roles form={form} field={f} path={p} />
      if (f.name === 'materialId' || f.name === 'framingMaterialId')
        return <FromLibrary form={form} field={f} path={p} materials={materials.data.value?.items ?? []} />
      return undefined
    },
  }
  return (
    <fieldset class="group rows layers-editor">
      <legend>{field.label}</legend>
      {model ? (
        <WallDrawing
          model={model}
          title={`${name}, as it is typed`}
          says={`${layers.length} layers from inside to outside.`}
          thicknessWords={(m) => number(m, thickness)}
          least="50rem"
          inAll={`${symbol(thickness)}, ${number(model.totalM, thickness)} in all`}
        />
      ) : (
        <p class="say">It is drawn as soon as a layer has a thickness.</p>
      )}
      <Looked assembly={assembly} membrane={form.get(['membrane']) as Row | undefined} />
      {error && (
        <p class="says" role="alert">
          <b>Refused.</b> {error}
        </p>
      )}
      <ol ref={list} class="layer-rows" aria-label={`Layers of ${name}`}>
        {layers.map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
          <li key={i}>
            <LayerRow
              form={form}
              field={field}
              path={path}
              index={i}
              row={row}
              count={layers.length}
              extras={extras}
              onMove={move}
            />
          </li>
        ))}
      </ol>
      {layers.length < field.maxRows && (
        <button type="button" class="b" onClick={() => form.insertRow(path, layers.length, fresh(layers))}>
          Add a layer outside
        </button>
      )}
    </fieldset>
  )
}

const fresh = (layers: Row[]): Row => ({ id: freshId(layers), controls: [] })

function LayerRow({
  form,
  field,
  path,
  index,
  row,
  count,
  extras,
  onMove,
}: LayersEditorProps & {
  index: number
  row: Row
  count: number
  extras: FieldExtras
  onMove: (from: number, to: number) => void
}) {
  const unit = unitOf(field.fields, 'thicknessM')
  const name = String(row.label || row.material || `layer ${index + 1}`)
  const bad = Object.keys(form.errors.value).some((key) => key.startsWith(`${pointer([...path, index])}.`))
  const layers = (form.get(path) as Row[] | undefined) ?? []
  // open from its beginning; it must not close under the hand once a thickness is typed
  const [isNew] = useState(row.thicknessM === undefined)
  return (
    <details class="open-up" open={bad || isNew || undefined}>
      <summary>
        <span>
          <b>
            {index + 1} {name}
          </b>
        </span>
        <span class="note">
          {bad
            ? 'something is refused'
            : typeof row.thicknessM === 'number'
              ? `${thicknessText(row.thicknessM, unit)} ${symbol(unit)}`
              : 'no thickness yet'}
        </span>
      </summary>
      <div class="inside">
        <FieldsAt form={form} fields={field.fields} path={[...path, index]} extras={extras} />
        <div class="acts">
          <button type="button" class="b" disabled={index === 0} onClick={() => onMove(index, index - 1)}>
            Move inward
          </button>
          <button
            type="button"
            class="b"
            disabled={index === count - 1}
            onClick={() => onMove(index, index + 1)}
          >
            Move outward
          </button>
          <button
            type="button"
            class="b"
            disabled={count >= field.maxRows}
            onClick={() => form.insertRow(path, index + 1, fresh(layers))}
          >
            Add a layer behind it
          </button>
          <button
            type="button"
            class="b"
            disabled={count <= field.minRows}
            onClick={() => form.removeRow(path, index)}
            aria-label={`Take away ${name}`}
          >
            Take away
          </button>
        </div>
      </div>
    </details>
  )
}

/** What a layer holds back: any of the controls, each as the layer that is counted on or as a second one. */
function Roles({ form, field, path }: LayersEditorProps) {
  const control = field.fields.find((f) => f.name === 'control')
  const held = (form.get(path) as Row[] | undefined) ?? []
  const name = pointer(path).replace(/[^\w]+/g, '-')
  return (
    <fieldset class="field one roles">
      <legend>{field.label}</legend>
      {(control?.options ?? []).map((o) => {
        const now = held.find((c) => c.control === o.id)
        const as = !now ? 'none' : now.second === true ? 'second' : 'first'
        return (
          <div key={o.id} class="role">
            <label>
              <input
                type="checkbox"
                checked={as !== 'none'}
                onChange={() => form.set(path, withControl(held, o.id, as === 'none' ? 'first' : 'none'))}
              />
              {o.label}
            </label>
            {as !== 'none' && (
              <label class="note">
                <input
                  type="checkbox"
                  name={`${name}-${o.id}`}
                  checked={as === 'second'}
                  onChange={() =>
                    form.set(path, withControl(held, o.id, as === 'second' ? 'first' : 'second'))
                  }
                />
                only helps
              </label>
            )}
          </div>
        )
      })}
      {field.help && <p class="hint">{field.help}</p>}
    </fieldset>
  )
}

function FromLibrary({ form, field, path, materials }: LayersEditorProps & { materials: MaterialJson[] }) {
  const id = `f-${pointer(path).replace(/[^\w]+/g, '-')}`
  const value = (form.get(path) as string | undefined) ?? ''
  const known = materials.find((m) => m.id === value)
  const error = form.error(path)
  const choose = (chosen: string) => {
    form.set(path, chosen || undefined)
    const material = materials.find((m) => m.id === chosen)
    if (!material || field.name !== 'materialId') return
    for (const name of ['material', 'label']) {
      const place = [...path.slice(0, -1), name]
      const said = form.get(place)
      // words that nobody typed follow the choice
      if (!said || said === known?.label) form.set(place, material.label)
    }
  }
  const conductivity = known?.properties.find((p) => p.property === 'CONDUCTIVITY')
  const lambda = conductivity?.values.find((v) => v.field === 'conductivityWPerMK')
  return (
    <div class={`field one${error ? ' refused' : ''}`}>
      <label for={id}>{field.label}</label>
      <div class="in">
        <select
          id={id}
          value={value}
          aria-describedby={`${id}-h`}
          aria-invalid={error ? 'true' : undefined}
          onChange={(e) => choose(e.currentTarget.value)}
        >
          <option value="">none, its values are typed</option>
          {value && !known && <option value={value}>{value}</option>}
          {materials.map((m) => (
            <option key={m.id} value={m.id}>
              {m.label}
            </option>
          ))}
        </select>
      </div>
      <p class="hint" id={`${id}-h`}>
        {!known
          ? 'Values that are typed below win over those of the library.'
          : typeof lambda?.value === 'number' && lambda.unit
            ? `λ ${words(lambda.value, lambda.unit)}: ${conductivity?.source} (${conductivity?.statusLabel}). A typed value wins.`
            : 'The library knows no conductivity of it: a membrane or a coating.'}
      </p>
      {error && (
        <p class="says" role="alert">
          <b>Refused.</b> {error}
        </p>
      )}
    </div>
  )
}

const PAUSE_MS = 400
const FINDINGS = 'assembly-findings'
const RESISTANCE = 'assembly-resistance'

/** The U-value and the usual mistakes of what is typed; the portal says what is missing. */
function Looked({ assembly, membrane }: { assembly: Row; membrane: Row | undefined }) {
  const rules = useResource<Declaration>(`/calculations/${FINDINGS}`)
  const resistance = useResource<Declaration>(`/calculations/${RESISTANCE}`)
  const found = useSignal<Finding[] | undefined>(undefined)
  const uValue = useSignal<number | undefined>(undefined)
  const why = useSignal('')
  const [r, h] = [rules.data.value, resistance.data.value]
  const typed = JSON.stringify({ ...assembly, membrane })
  useEffect(() => {
    if (!r || !h) return
    const asked = new AbortController()
    const row = JSON.parse(typed) as Row
    const post = <O,>(calculation: string, body: Row) =>
      call<Answer<Row, O>>('POST', `/calculations/${calculation}`, { body, signal: asked.signal })
    const timer = setTimeout(async () => {
      try {
        const rulesBody = pick(r.inputs, row)
        const placement = pick(h.inputs.find((f) => f.name === 'placement')?.fields ?? [], row)
        const heatBody = { ...pick(h.inputs, { layers: row.layers }), placement, fasteners: [] }
        const [rule, heat] = await Promise.all([
          post<{ findings: Finding[] }>(FINDINGS, rulesBody),
          post<{ uValueWPerM2K: number }>(RESISTANCE, heatBody),
        ])
        const weights = declared(r.outputs, 'findings.weight')?.options ?? []
        found.value = rule.data.output.findings.map((f) => ({
          ...f,
          weightLabel: weights.find((o) => o.id === f.weight)?.label ?? '',
        }))
        uValue.value = heat.data.printed.uValueWPerM2K
        why.value = ''
      } catch (thrown) {
        if (asked.signal.aborted) return
        found.value = undefined
        uValue.value = undefined
        why.value = Problem.of(thrown).message
      }
    }, PAUSE_MS)
    return () => {
      clearTimeout(timer)
      asked.abort()
    }
  }, [typed, r, h, found, uValue, why])
  if (!r || !h) return null
  return (
    <div class="looked" aria-live="polite">
      {why.value ? (
        <p class="note">Not computed yet: {why.value}</p>
      ) : (
        <p class="note">
          U-value of what is typed, without fasteners:{' '}
          <Quantity value={uValue.value} unit={unitOf(h.outputs, 'uValueWPerM2K')} step={0.001} />
        </p>
      )}
      {found.value && <Findings findings={found.value} />}
    </div>
  )
}
