/** A button that lets a file be chosen, of JSON where nothing else is said. */
import { useRef } from 'react'

interface Props {
  readonly label: string
  /** Endings and media types, as a field of HTML takes them. */
  readonly accept?: string
  /** Called at once; the field is free again for the same file when it is done. */
  readonly take: (file: File) => Promise<void>
}

export function FilePick({ label, accept = '.json,application/json', take }: Props) {
  const field = useRef<HTMLInputElement>(null)
  return (
    <>
      <button type="button" onClick={() => field.current?.click()}>
        {label}
      </button>
      <input
        ref={field}
        className="unseen"
        type="file"
        tabIndex={-1}
        aria-label={label}
        accept={accept}
        onChange={(event) => {
          const input = event.currentTarget
          const [file] = input.files ?? []
          if (file) take(file).finally(() => (input.value = ''))
        }}
      />
    </>
  )
}
