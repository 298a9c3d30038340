import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'
import { post } from '../../api/http.ts'
import { Problem } from '../../api/problem.ts'
import { useResource } from '../../api/resource.ts'
import type { MaterialJson, MaterialPage } from '../../api/schema.d.ts'
import type { Field, Row } from '../../form/field.ts'
import { DataTable } from '../../parts/lists.tsx'
import { NothingYet, Of, Wrong } from '../../parts/Says.tsx'
import { type Material, materialValueWords, useMaterials, withWords } from '../../record/materials.ts'
import { Sheet } from '../../shell/Sheet.tsx'
import { me } from '../../shell/session.ts'
import { dayWords } from '../../units/days.ts'
import { AddMaterial } from './AddMaterial.tsx'

/** Every material that layers may name, each value with its source; own ones are added from a data sheet. */
export default function MaterialsPage() {
  const all = useSignal(false)
  const words = useSignal('')
  const list = useMaterials(all.value)
  const fields = useResource<Field[]>('/materials/fields')
  const begun = useSignal<Row | undefined>(undefined)
  const page = list.data.value
  const own = page?.items.filter((m) => m.own) ?? []
  return (
    <Sheet
      over="Calculations · materials"
      title="Materials"
      heading="Every value of a material says where it comes from."
      lead="What a data sheet leaves out the material does not know: a calculation that needs it says so. An own material keeps its values for good; a changed data sheet becomes another material and is offered in its place."
      block={[
        ['Sheet', 'Materials'],
        ['Day', dayWords(me.value?.today)],
        ['Own', page ? String(own.length) : ''],
      ]}
    >
      <Find words={words.value} onType={(text) => (words.value = text)} />
      <p class="no-print">
        <label>
          <input
            type="checkbox"
            checked={all.value}
            onChange={(e) => {
              all.value = e.currentTarget.checked
            }}
          />{' '}
          also own ones that are no longer offered
        </label>
      </p>
      {page?.actions.includes('add-material') && fields.data.value && (
        <AddMaterial
          fields={fields.data.value}
          begun={begun.value}
          onAdded={() => {
            begun.value = undefined
            void list.reload()
          }}
        />
      )}
      <Of resource={list} what="Reading the materials.">
        {(came) => (
          <Found
            page={came}
            words={words.value}
            onChanged={() => void list.reload()}
            onBegin={(values) => {
              begun.value = values
            }}
          />
        )}
      </Of>
    </Sheet>
  )
}

function Find({ words, onType }: { words: string; onType: (text: string) => void }) {
  const id = useId()
  return (
    <div class="field one no-print">
      <label for={id}>Find by word</label>
      <div class="in">
        <input
          id={id}
          class="words"
          type="search"
          autocomplete="off"
          value={words}
          aria-describedby={`${id}-h`}
          onInput={(e) => onType(e.currentTarget.value)}
        />
      </div>
      <p class="hint" id={`${id}-h`}>
        Of the name, a property or a source.
      </p>
    </div>
  )
}

interface FoundProps {
  page: MaterialPage
  words: string
  onChanged: () => void
  onBegin: (values: Row) => void
}

function Found({ page, words, onChanged, onBegin }: FoundProps) {
  const found = withWords(page.items, words)
  const mayAdd = page.actions.includes('add-material')
  const part = (heading: string, materials: Material[], nothing: string) => (
    <section>
      <h2>{heading}</h2>
      {materials.length === 0 && <NothingYet>{nothing}</NothingYet>}
      {materials.map((m) => (
        <One key={m.id} material={m} onChanged={onChanged} onBegin={mayAdd ? onBegin : undefined} />
      ))}
    </section>
  )
  return (
    <>
      <p role="status" class="note">
        {found.length} of {page.items.length} materials.
        {page.next && ' There are more of the firm’s own than are listed here.'}
      </p>
      {part(
        'The firm’s own',
        found.filter((m) => m.own),
        words ? 'None of the firm’s own has these words.' : 'The firm has added none yet.',
      )}
      {part(
        'With the portal',
        found.filter((m) => !m.own),
        'None has these words.',
      )}
    </>
  )
}

interface OneProps {
  material: Material
  onChanged: () => void
  onBegin?: (values: Row) => void
}

function One({ material, onChanged, onBegin }: OneProps) {
  const problem = useSignal<Problem | undefined>(undefined)
  async function withdraw() {
    problem.value = undefined
    try {
      await post<MaterialJson>(`/materials/${encodeURIComponent(material.id)}/withdrawal`)
      onChanged()
    } catch (thrown) {
      problem.value = Problem.of(thrown)
    }
  }
  const rows = material.properties.flatMap((property) =>
    property.values.map((value) => ({ property, value })),
  )
  return (
    <details class="open-up">
      <summary>
        <span>
          <b>{material.label}</b>
        </span>
        <span class="note">{standing(material) || material.id}</span>
      </summary>
      <div class="inside">
        <p class="note">
          <code>{material.id}</code>
          {material.own && ` · added by ${material.addedBy}, ${dayWords(material.addedAt ?? undefined)}`}
          {material.supersededBy && (
            <>
              {' · superseded by '}
              <code>{material.supersededBy}</code>
            </>
          )}
          {material.withdrawnBy &&
            ` · withdrawn by ${material.withdrawnBy}, ${dayWords(material.withdrawnAt ?? undefined)}`}
        </p>
        <DataTable
          label={`${material.label}: what is known of it`}
          columns={[
            { head: 'Property', cell: ({ value }) => value.label },
            { head: 'Value', cell: ({ value }) => materialValueWords(value) },
            {
              head: 'From',
              cell: ({ property }) => (
                <>
                  {property.source} <span class="note">{property.statusLabel}</span>
                </>
              ),
            },
          ]}
          rows={rows}
          keyOf={({ value }) => value.field}
          rowHeads
        />
        {problem.value && <Wrong problem={problem.value} />}
        {(onBegin || material.actions.length > 0) && (
          <div class="acts no-print">
            {onBegin && (
              <button type="button" class="b" onClick={() => onBegin(typed(material))}>
                Begin a data sheet with these values
              </button>
            )}
            {material.actions.includes('withdraw-material') && (
              <button type="button" class="plain" onClick={() => void withdraw()}>
                Offer it no longer
              </button>
            )}
          </div>
        )}
      </div>
    </details>
  )
}

function standing(material: Material): string {
  if (material.withdrawnAt) return 'withdrawn'
  return material.supersededBy ? 'superseded' : ''
}

/** Its values as a form takes them: what is not known is left out. */
function typed(material: Material): Row {
  return Object.fromEntries(Object.entries(material.values).filter(([, value]) => value != null)) as Row
}
