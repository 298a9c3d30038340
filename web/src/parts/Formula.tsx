import { setFormula } from './formula.ts'

/** An equation with its indices and powers set; a reader hears it as it was written. */
export function Formula({ text }: { text: string }) {
  return (
    <span class="math">
      {setFormula(text).map((p, i) => {
        // biome-ignore-start lint/suspicious/noArrayIndexKey: pieces keep their order
        if (p.set === 'sub') return <sub key={i}>{p.text}</sub>
        if (p.set === 'sup') return <sup key={i}>{p.text}</sup>
        return p.symbol ? <var key={i}>{p.text}</var> : <span key={i}>{p.text}</span>
        // biome-ignore-end lint/suspicious/noArrayIndexKey: pieces keep their order
      })}
    </span>
  )
}
