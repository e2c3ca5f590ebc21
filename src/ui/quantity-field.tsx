/** Fields that take a length, or another quantity, typed the way people type it. */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import type { Issue } from '../../rules/index.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import { keyStep } from '../units/steps.ts'
import { text, type Word } from '../words/index.ts'
import { useWords } from './use-words.ts'

interface FieldProps<T> {
  readonly label: string
  /** m; negative only where the field means it. */
  readonly value: T
  /** Takes the value; returns the reasons if it cannot, or one in words. */
  readonly commit: (to: T) => readonly Issue[] | string
  /** What is to be asked about a value that was taken all the same; `put` takes another in its place. */
  readonly ask?: (of: T, typed: string, put: (to: T) => void) => ReactNode
  readonly hideLabel?: boolean
  /** The hand is put here when this becomes true. */
  readonly focus?: boolean
  readonly className?: string
  /** What is shown was only taken: typed again as it stands, it is said. */
  readonly unsaid?: boolean
  /** The text that the value was first typed as, elsewhere: asked about here. */
  readonly from?: string | undefined
  /** What is being typed could be taken as it stands, or could not. */
  readonly typing?: ((valid: boolean) => void) | undefined
}

interface QuantityFieldProps<T> extends FieldProps<T> {
  readonly shown: string
  readonly placeholder?: string
  /** The value of a text, or what is wrong with it. */
  read(typed: string): { readonly value: T } | { readonly fault: Word; readonly example: string }
  /** The next one up or down by an arrow key. */
  next(way: 1 | -1, large: boolean): T
}

interface LengthFieldProps extends FieldProps<number> {
  /** What an arrow key adds, m, where it goes by something else than inches or centimeters. */
  readonly step?: number
}

/** A length typed the way people type it. */
export function LengthField(props: LengthFieldProps & { readonly shown?: string }) {
  const { units, t, length } = useWords()
  const example = t(`example.length.${units}`)
  return (
    <QuantityField
      {...props}
      shown={props.shown ?? length(props.value)}
      read={(typed) => {
        const read = parseLength(typed, bareUnit(units))
        return read.ok ? { value: read.meters } : { fault: `length.${read.fault}`, example }
      }}
      next={(way, large) => props.value + way * (props.step ?? keyStep(units, large))}
    />
  )
}

/**
 * Takes its value on Enter or when it loses focus. Text that was not edited changes nothing, so that a value rounded for the screen never gets
 * into the design. What cannot be read stays as typed, with what was expected beside it.
 */
export function QuantityField<T>(props: QuantityFieldProps<T>) {
  const { label, shown, placeholder, next, commit, read, typing } = props
  const { hideLabel = false, focus = false, className = '' } = props
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (focus) input.current?.focus()
  }, [focus])
  const { units } = useWords()
  const id = useId()
  const { typed, fault, asked, type, take, reset } = useTyped(props)
  const ready = typed !== null && !('fault' in read(typed))
  // biome-ignore lint/correctness/useExhaustiveDependencies: told when it changes.
  useEffect(() => typing?.(ready), [ready])
  const nudge = (way: 1 | -1, large: boolean): void => {
    if (commit(next(way, large)).length === 0) type(null)
  }
  return (
    <div className={`field ${className}`}>
      <label htmlFor={id} className={hideLabel ? 'unseen' : ''}>
        {label}
      </label>
      <input
        id={id}
        ref={input}
        type="text"
        inputMode={units === 'imperial' ? 'text' : 'decimal'}
        autoComplete="off"
        spellCheck={false}
        value={typed ?? shown}
        placeholder={placeholder}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : `${id}-fault`}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => type(event.currentTarget.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
          else if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation()
            reset()
          } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
            event.preventDefault()
            nudge(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey)
          }
        }}
      />
      {fault !== null && (
        <p className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
      {asked}
    </div>
  )
}

/** What was typed and not taken yet, null where nothing was; and what is wrong with it. */
function useTyped<T>({ value, shown, read, commit, ask, unsaid, from }: QuantityFieldProps<T>) {
  const { t } = useWords()
  const [typed, type] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  /** With the value as it was taken in: of another one it says nothing. */
  const [doubt, setDoubt] = useState<{ readonly of: T; readonly asked: ReactNode } | null>(() =>
    from === undefined ? null : { of: value, asked: ask?.(value, from, (to) => put(to)) },
  )
  const reset = (): void => {
    type(null)
    setFault(null)
  }
  // Another value from elsewhere (a drag, undo) takes the place of what stood here.
  const [last, setLast] = useState(value)
  if (last !== value) {
    setLast(value)
    reset()
  }
  const take = (): void => {
    if (typed === null || typed === shown) {
      if (typed !== null && unsaid) put(value)
      else if (typed !== null || fault !== null) reset()
      return
    }
    const said = read(typed)
    if ('fault' in said) {
      setFault(t(said.fault, { example: text(said.example) }))
      return
    }
    put(said.value, typed)
  }
  const put = (to: T, from = ''): void => {
    const why = commit(to)
    if (why.length > 0) {
      setFault(typeof why === 'string' ? why : t('length.refused'))
      return
    }
    reset()
    setDoubt({ of: to, asked: ask?.(to, from, put) })
  }
  const asked = doubt && near(doubt.of, value) && typed === null ? doubt.asked : null
  return { typed, fault, asked, type, take, reset }
}

/** A length is kept to 1e-7 m. */
const near = <T,>(a: T, b: T): boolean =>
  a === b || (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) < 1e-6)
