import { inflateSync } from 'node:zlib'
import type { Page } from '@playwright/test'

/** The words on each printed page, without the spaces between them. */
export async function printed(page: Page): Promise<string[]> {
  return pagesOf(await page.pdf({ preferCSSPageSize: true, printBackground: true }))
}

/** Reads what Chromium writes: one content stream a page, glyphs in hexadecimal, a table of their letters a font. */
function pagesOf(pdf: Buffer): string[] {
  const file = pdf.toString('latin1')
  const objects = new Map<string, string>()
  for (const [, id, body] of file.matchAll(/(\d+) 0 obj\n([\s\S]*?)endobj/g)) objects.set(id!, body!)
  const stream = (id: string) => {
    const body = objects.get(id)!
    const raw = body.slice(body.indexOf('stream\n') + 7, body.lastIndexOf('\nendstream'))
    return body.includes('/FlateDecode') ? inflateSync(Buffer.from(raw, 'latin1')).toString('latin1') : raw
  }
  const letters = new Map<string, Map<number, string>>()
  const lettersOf = (font: string) => {
    const known = letters.get(font) ?? alphabet(stream(/\/ToUnicode (\d+) 0 R/.exec(objects.get(font)!)![1]!))
    letters.set(font, known)
    return known
  }
  return [...objects.values()]
    .filter((body) => /\/Type \/Page\b/.test(body))
    .map((body) => {
      const fonts = new Map([...body.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, id]) => [name!, id!]))
      let font = ''
      let words = ''
      for (const [, chosen, glyphs] of stream(/\/Contents (\d+) 0 R/.exec(body)![1]!).matchAll(
        /\/(F\d+) [\d.]+ Tf|<([\dA-F]+)> Tj/g,
      )) {
        if (chosen) font = fonts.get(chosen)!
        else {
          const digits = objects.get(font)!.includes('/Type0') ? 4 : 2
          for (let i = 0; i < glyphs!.length; i += digits) {
            words += lettersOf(font).get(Number.parseInt(glyphs!.slice(i, i + digits), 16)) ?? ''
          }
        }
      }
      return words.replace(/\s/g, '')
    })
}

function alphabet(map: string): Map<number, string> {
  const found = new Map<number, string>()
  const letter = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le')
  for (const [, block] of map.matchAll(/beginbfchar\n([\s\S]*?)endbfchar/g)) {
    for (const [, glyph, hex] of block!.matchAll(/<(\w+)> <(\w+)>/g))
      found.set(Number.parseInt(glyph!, 16), letter(hex!))
  }
  for (const [, block] of map.matchAll(/beginbfrange\n([\s\S]*?)endbfrange/g)) {
    for (const [, from, to, hex] of block!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      const first = Number.parseInt(from!, 16)
      for (let g = first; g <= Number.parseInt(to!, 16); g++)
        found.set(g, String.fromCodePoint(Number.parseInt(hex!, 16) + g - first))
    }
  }
  return found
}
