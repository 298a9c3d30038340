import { useId } from 'preact/hooks'

interface ReasonProps {
  label: string
  value: string
  onType: (text: string) => void
  /** What is refused about it. */
  error?: string
  hint?: string
}

/** A sentence that stays on the record. */
export function Reason({ label, value, onType, error, hint }: ReasonProps) {
  const id = useId()
  return (
    <div class={`field one${error ? ' refused' : ''}`}>
      <label for={id}>{label}</label>
      <div class="in">
        <textarea
          id={id}
          class="words"
          rows={2}
          value={value}
          aria-invalid={error ? 'true' : undefined}
          aria-describedby={hint ? `${id}-h` : undefined}
          aria-errormessage={error ? `${id}-e` : undefined}
          onInput={(e) => onType(e.currentTarget.value)}
        />
      </div>
      {hint && (
        <p class="hint" id={`${id}-h`}>
          {hint}
        </p>
      )}
      {error && (
        <p class="says" id={`${id}-e`} role="alert">
          <b>Not saved.</b> {error}
        </p>
      )}
    </div>
  )
}
