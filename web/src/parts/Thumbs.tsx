import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { outbox } from '../offline/queue.ts'

/** Small pictures: from this device while they wait, from the portal afterwards. */
export function Thumbs({ house, photos }: { house: string; photos: string[] }) {
  return (
    <ul class="thumbs">
      {photos.map((p, i) => (
        <li key={p}>
          <Thumb house={house} id={p} words={`Photo ${i + 1}`} />
        </li>
      ))}
    </ul>
  )
}

function Thumb({ house, id, words }: { house: string; id: string; words: string }) {
  const waits = outbox.value.find((w) => w.clientId === id)
  const url = useSignal<string | undefined>(undefined)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the store gives another object for the same photo each time
  useEffect(() => {
    if (!waits?.file) return
    const made = URL.createObjectURL(waits.file.blob)
    url.value = made
    return () => URL.revokeObjectURL(made)
  }, [waits?.clientId])
  const src = waits ? url.value : `/api/v1/houses/${encodeURIComponent(house)}/photos/${id}/thumbnail`
  return src ? <img src={src} alt={words} width="96" height="72" loading="lazy" /> : null
}
