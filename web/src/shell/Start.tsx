import { useResource } from '../api/resource.ts'
import { Matter, Matters } from '../parts/lists.tsx'
import { type Shape, Status } from '../parts/Status.tsx'
import { dayWords } from '../units/days.ts'
import { Sheet } from './Sheet.tsx'
import { me, type Role, roleWord } from './session.ts'

interface StartMatter {
  shape: Shape
  word: string
  houseId: string | null
  title: string
  href: string | null
  sentence: string
  tags: string[]
  note: string
}

interface StartPage {
  role: Role
  over: string
  finding: string
  lead: string
  houses: { id: string; name: string }[]
  sections: { title: string; aside: string; matters: StartMatter[]; nothing: string }[]
}

const nameOf = (start: StartPage, id: string) => start.houses.find((h) => h.id === id)?.name ?? ''

/** The first sheet after signing in: what this role wants first, as the portal composed it. */
export function Start() {
  const page = useResource<StartPage>('/views/start')
  const start = page.data.value
  const problem = page.problem.value
  const role = start?.role
  return (
    <Sheet
      over={start?.over}
      heading={start?.finding ?? (problem ? 'Your start page did not come.' : 'Looking at your houses')}
      lead={start?.lead || problem?.message}
      kind={role === 'OWNER' ? 'owner' : 'sheet'}
      block={[
        ['Firm', me.value?.firmName ?? ''],
        ['Sheet', 'Start'],
        ['For', role ? roleWord[role] : ''],
        ['Record as of', dayWords(me.value?.today)],
      ]}
    >
      <div class={role === 'OWNER' ? '' : 'agenda'}>
        {start?.sections.map((section) => (
          <section key={section.title}>
            <h2>{section.title}</h2>
            {section.aside && <p class="aside">{section.aside}</p>}
            {section.matters.length === 0 ? (
              <p class="note">{section.nothing}</p>
            ) : (
              <Matters label={section.title}>
                {section.matters.map((m) => (
                  <Matter
                    key={`${m.houseId} ${m.title} ${m.sentence}`}
                    mark={<Status is={m.shape}>{m.word}</Status>}
                    note={m.note}
                  >
                    {m.href ? <a href={m.href}>{m.title}</a> : m.title}{' '}
                    {m.houseId && start.houses.length > 1 && (
                      <span class="note">
                        {nameOf(start, m.houseId)} <b class="house-tag">{m.houseId}</b>
                      </span>
                    )}{' '}
                    {m.tags.map((tag) => (
                      <span class="tag" key={tag}>
                        {tag}
                      </span>
                    ))}
                    {m.sentence && <p>{m.sentence}</p>}
                  </Matter>
                ))}
              </Matters>
            )}
          </section>
        ))}
      </div>
    </Sheet>
  )
}
