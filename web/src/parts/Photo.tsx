import { useSignal } from '@preact/signals'
import { useId } from 'preact/hooks'

const LONGEST = 2000
const QUALITY = 0.82

export interface TakenPhoto {
  blob: Blob
  /** ISO 8601, by the clock of the device. */
  takenAt: string
}

/**
 * Draws a photo anew, at most 2000 pixels long: the new file holds the picture and nothing else, so neither the place
 * nor the make of the phone goes along.
 */
export async function smaller(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  const factor = Math.min(1, LONGEST / Math.max(picture.width, picture.height))
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * factor)),
    Math.max(1, Math.round(picture.height * factor)),
  )
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY })
}

/** Takes a photo with the phone's camera, or a file. */
export function PhotoInput({ words, onPhoto }: { words: string; onPhoto: (photo: TakenPhoto) => void }) {
  const id = useId()
  const said = useSignal<string | undefined>(undefined)
  async function take(input: HTMLInputElement) {
    const file = input.files?.[0]
    if (!file) return
    said.value = undefined
    try {
      const takenAt = new Date(file.lastModified || Date.now()).toISOString()
      onPhoto({ blob: await smaller(file), takenAt })
    } catch {
      said.value = `${file.name} cannot be read as a picture.`
    } finally {
      input.value = ''
    }
  }
  return (
    <div class="photo-input">
      <label class="b" for={id}>
        {words}
      </label>
      <input
        id={id}
        class="vh"
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(e) => void take(e.currentTarget)}
      />
      {said.value && (
        <p class="says" role="alert">
          <b>Not taken.</b> {said.value}
        </p>
      )}
    </div>
  )
}
