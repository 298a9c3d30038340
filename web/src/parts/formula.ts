/** A piece of an equation: set on the line, below it or above it. */
export interface Piece {
  text: string
  set: 'line' | 'sub' | 'sup'
  /** A letter that stands for a quantity, which is set slanted. */
  symbol?: boolean
}

/** Letters that stand alone or carry what follows them as an index. */
const GREEK = 'αβγδεζηθκλμνξπρστφχψωΓΔΘΛΞΠΣΦΨΩ'

/** Small letters with an index written on: pws is p with the index ws. Other runs of small letters are words. */
const INDEXED = new Set(
  'pws pw pv pd pi pe pmax pfail cp cw td ti te to tw uQ fs fw fc pf sd gv ug Aw dp vn Qlargest'.split(' '),
)

/** What looks like a letter with an index and is a unit or a name. */
const PLAIN = new Set('Pa kPa kJ kg kW MJ Hz Re Nu Gr Pr Bi Ra Fo ISO IBC E779 Wh kWh'.split(' '))

/**
 * Sets the plain notation of an equation: an index after its letter (Q50, Tsup, ρin, Q_high) goes below the line, what
 * is raised (x^n, x^(2n − 1)) above it, and letters that stand for quantities are marked. Fractions stay on the line.
 * Anything that it does not know stays as it was written; no character but the marks ^ and _ is ever lost.
 */
export function setFormula(text: string): Piece[] {
  const pieces: Piece[] = []
  const add = (piece: Piece) => {
    const last = pieces.at(-1)
    if (last && last.set === piece.set && last.symbol === piece.symbol) last.text += piece.text
    else pieces.push(piece)
  }
  let rest = text
  while (rest) {
    const raised = /^\^(\(([^()]*|[^()]*\([^()]*\)[^()]*)\)|[−-]?[\p{L}\d.]+)/u.exec(rest)
    if (raised) {
      add({ text: raised[2] ?? raised[1]!, set: 'sup' })
      rest = rest.slice(raised[0].length)
      continue
    }
    // e-5 of a number written with its power of ten stays in the number; so does the unit behind a figure
    const number = /^\d[\d.]*(e[−-]?\d+)?/.exec(rest)
    if (number) {
      add({ text: number[0], set: 'line' })
      rest = rest.slice(number[0].length)
      continue
    }
    // the article of a sentence is no quantity
    const article = /^a(?= \p{Ll}{2})/u.test(rest)
    if (article) {
      add({ text: 'a', set: 'line' })
      rest = rest.slice(1)
      continue
    }
    const name = /^\p{L}\p{M}*[\p{L}\p{M}\d]*(_[\p{L}\d]+|(?<=^sd),\p{Ll}+)?/u.exec(rest)
    if (name) {
      for (const piece of setName(name[0])) add(piece)
      rest = rest.slice(name[0].length)
      continue
    }
    const other = /^[^\p{L}\d^]+/u.exec(rest)?.[0] ?? rest[0]!
    add({ text: other, set: 'line' })
    rest = rest.slice(other.length)
  }
  return pieces
}

/** One run of letters and figures: a word, a letter, or a letter with its index. */
function setName(name: string): Piece[] {
  const [head, tail] = name.split('_') as [string, string | undefined]
  if (tail !== undefined) return [...setName(head), { text: tail, set: 'sub' }]
  if (PLAIN.has(name)) return [{ text: name, set: 'line' }]
  if (name.startsWith('Σ') && name.length > 1) return [{ text: 'Σ', set: 'line' }, ...setName(name.slice(1))]
  const [, short, figure] = /^(ACH|ELA|EqLA)(\d+)$/.exec(name) ?? []
  if (short)
    return [
      { text: short, set: 'line' },
      { text: figure!, set: 'sub' },
    ]
  const [, thick, side] = /^(s)(d,\p{Ll}+)$/u.exec(name) ?? []
  if (thick)
    return [
      { text: thick, set: 'line', symbol: true },
      { text: side!, set: 'sub' },
    ]
  // Δ belongs to the letter behind it
  const first = /^(Δ?\p{L}\p{M}*)(.*)$/u.exec(name)!
  const [, letter, index] = first as unknown as [string, string, string]
  if (name === 'Σ') return [{ text: name, set: 'line' }]
  const symbol: Piece = { text: letter, set: 'line', symbol: true }
  if (index === '') return [symbol]
  const capital = /^\p{Lu}/u.test(letter) && /^(\d+|\p{Ll}{1,5}\d?)$/u.test(index)
  const indexed =
    /^\d+$/.test(index) || capital || GREEK.includes(letter[0]!) || INDEXED.has(name) || letter.length > 1
  return indexed ? [symbol, { text: index, set: 'sub' }] : [{ text: name, set: 'line' }]
}
