import { dayWords } from '../units/days.ts'
import { firmPages } from './routes.ts'
import { Sheet } from './Sheet.tsx'
import { holds, me } from './session.ts'

/** The first sheet after signing in, where the role has no start page of its own. */
export function Start() {
  const pages = firmPages((roles) => holds(...roles))
  return (
    <Sheet
      heading={`Good day, ${me.value?.displayName ?? ''}.`}
      block={[
        ['Sheet', 'Start'],
        ['Day', dayWords(me.value?.today)],
      ]}
    >
      <ul class="matters">
        {pages.map(({ href, words }) => (
          <li key={href}>
            <a href={href}>{words}</a>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
