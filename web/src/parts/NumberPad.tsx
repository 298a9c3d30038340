import { useId } from 'preact/hooks'

interface NumberPadProps {
  /** What is read off: "North-east, high". */
  label: string
  unit: string
  /** The text as typed so far. */
  text: string
  onType: (text: string) => void
  /** Whether a minus makes sense. */
  signed?: boolean
}

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0']

/** Large keys for gloves and sun. A keyboard types into the same box. */
export function NumberPad({ label, unit, text, onType, signed }: NumberPadProps) {
  const id = useId()
  const press = (key: string) => {
    if (key === '.' && text.includes('.')) return
    onType(text + key)
  }
  return (
    <div class="number-pad">
      <p class="entry">
        <label for={id}>{label}</label>
        <span>
          <input
            id={id}
            inputMode="none"
            autocomplete="off"
            value={text}
            onInput={(e) => onType(e.currentTarget.value)}
            size={Math.max(3, text.length)}
          />
          &#8239;<i>{unit}</i>
        </span>
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would draw the keys as fields */}
      <div class="pad" role="group" aria-label={`Keys for ${label}`}>
        {KEYS.map((key) => (
          <button
            key={key}
            type="button"
            aria-label={key === '.' ? 'point' : undefined}
            onClick={() => press(key)}
          >
            {key}
          </button>
        ))}
        <button type="button" onClick={() => onType(text.slice(0, -1))}>
          Back
        </button>
        {signed && (
          <button
            type="button"
            class="sign"
            onClick={() => onType(text.startsWith('−') ? text.slice(1) : `−${text}`)}
          >
            below zero
          </button>
        )}
      </div>
    </div>
  )
}
