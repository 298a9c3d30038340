import { Matter, Matters } from '../parts/lists.tsx'
import { Status } from '../parts/Status.tsx'
import type { Finding } from './types.ts'

const SHAPE: Record<string, 'over' | 'look' | 'note'> = { FAILS: 'over', LOOK: 'look', NOT_PROVEN: 'look' }

/** Rules that are broken or not proven, each with its reason and where the rule comes from. */
export function Findings({ findings, none }: { findings: Finding[]; none?: string }) {
  if (findings.length === 0) return none ? <p class="say">{none}</p> : null
  return (
    <Matters>
      {findings.map((f) => (
        <Matter
          key={f.id + f.about + f.sentence}
          mark={<Status is={SHAPE[f.weight] ?? 'note'}>{capital(f.weightLabel)}</Status>}
          note={f.source}
        >
          {f.sentence} {f.reason}
        </Matter>
      ))}
    </Matters>
  )
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
