/** One of a list, in a native select. */
import type { ReactNode } from 'react'

interface SelectProps<T extends string> {
  readonly id?: string
  /** Accessible name, if no `label` element gives one. */
  readonly name?: string
  readonly value: T
  readonly options: readonly T[]
  readonly wordOf: (option: T) => ReactNode
  readonly set: (to: T) => void
}

export function Select<T extends string>({ id, name, value, options, wordOf, set }: SelectProps<T>) {
  return (
    <select
      id={id}
      aria-label={name}
      value={value}
      onChange={(event) => {
        const chosen = options.find((option) => option === event.currentTarget.value)
        if (chosen !== undefined) set(chosen)
      }}
    >
      {options.map((option) => (
        <option key={option} value={option}>
          {wordOf(option)}
        </option>
      ))}
    </select>
  )
}
