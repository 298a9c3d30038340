interface ChooseProps<T extends string> {
  /** Unique in the page. */
  name: string
  legend: string
  options: [T, string][]
  value: T
  onChoose: (value: T) => void
}

/** One of several: words on a rule, the chosen one under a carmine stroke. */
export function Choose<T extends string>({ name, legend, options, value, onChoose }: ChooseProps<T>) {
  return (
    <fieldset class="choose">
      <legend>{legend}</legend>
      {options.map(([id, words]) => (
        <label key={id}>
          <input type="radio" name={name} value={id} checked={id === value} onChange={() => onChoose(id)} />
          {words}
        </label>
      ))}
    </fieldset>
  )
}
