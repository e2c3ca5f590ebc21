/** Docks that the page offers to begin with: read from its file. */
import { type Design, LIMITS, parseDesign } from '../../rules/index.ts'
import { within } from '../platform/time-limit.ts'

export interface Preset {
  readonly name: string
  readonly design: Design
}

interface Wrong {
  readonly code: 'presets'
  readonly path: string
  readonly message: string
}

export interface Presets {
  readonly presets: readonly Preset[]
  readonly faults: readonly Wrong[]
}

/** A page with more has a page of its own for them. */
const MOST = 12
const LONGEST_NAME = 80
/** ms */
const PATIENCE = 20_000

/**
 * `[{ "name": "24 ft for sand", "design": { … } }, …]`; one that cannot be used is left out, and told.
 * Rejects where there is no such file.
 */
export async function readPresets(url: string, signal: AbortSignal): Promise<Presets> {
  const response = await within(PATIENCE, fetch(url, { signal }))
  if (!response.ok) throw new Error(`${response.status} ${response.statusText}`.trim())
  const text = await within(PATIENCE, response.text())
  if (text.length > LIMITS.textBytes)
    throw new Error(`${text.length} characters; expected at most ${LIMITS.textBytes}`)
  return presetsOf(JSON.parse(text))
}

function presetsOf(list: unknown): Presets {
  const presets: Preset[] = []
  const faults: Wrong[] = []
  const wrong = (path: string, message: string): void => {
    faults.push({ code: 'presets', path, message })
  }
  if (!Array.isArray(list)) {
    wrong('', 'expected a list')
    return { presets, faults }
  }
  if (list.length > MOST) wrong('', `${list.length} docks; expected at most ${MOST}`)
  const names = new Set<string>()
  list.slice(0, MOST).forEach((one: unknown, i) => {
    const name: unknown = typeof one === 'object' && one !== null ? Reflect.get(one, 'name') : undefined
    if (typeof name !== 'string' || name.trim() === '' || name.length > LONGEST_NAME || names.has(name)) {
      wrong(`[${i}].name`, `expected a name of its own, 1 to ${LONGEST_NAME} characters`)
      return
    }
    names.add(name)
    const parsed = parseDesign(Reflect.get(one as object, 'design'))
    if (parsed.ok) presets.push({ name, design: parsed.value })
    else for (const { path, message } of parsed.issues.slice(0, 3)) wrong(`[${i}].design.${path}`, message)
  })
  return { presets, faults }
}
