/** Head of the screen: the dock's name, undo and redo, units, and what is done with files. */
import { useRef } from 'react'
import { useHost } from '../state/host.ts'
import { keepUnits } from '../state/kept-units.ts'
import { useLeadline } from '../state/store.ts'
import { Choice, Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { FileMenu } from './file-menu.tsx'

export function Toolbar() {
  const canUndo = useLeadline((s) => s.canUndo)
  const canRedo = useLeadline((s) => s.canRedo)
  const undo = useLeadline((s) => s.undo)
  const redo = useLeadline((s) => s.redo)
  const set = useLeadline((s) => s.set)
  const host = useHost()
  const { t, units } = useWords()
  return (
    <header className="toolbar" part="toolbar">
      <Name />
      <div className="tools">
        <button type="button" className="icon" aria-label={t('undo')} disabled={!canUndo} onClick={undo}>
          <Sign d="M7 4 3 8l4 4M3 8h7a4 4 0 0 1 0 8H8" />
        </button>
        <button type="button" className="icon" aria-label={t('redo')} disabled={!canRedo} onClick={redo}>
          <Sign d="M11 4l4 4-4 4M15 8H8a4 4 0 0 0 0 8h2" />
        </button>
        <Choice
          legend={t('units.label')}
          value={units}
          columns={2}
          options={[
            { value: 'imperial', label: t('units.imperial') },
            { value: 'metric', label: t('units.metric') },
          ]}
          set={(to) => {
            if (host.keeps) keepUnits(to)
            set({ units: to })
          }}
        />
        <FileMenu />
        <slot name="tools" />
      </div>
    </header>
  )
}

/** The name is typed where it stands. One stay in the field is one step of undo. */
function Name() {
  const name = useLeadline((s) => s.design.name)
  const edit = useLeadline((s) => s.edit)
  const endGesture = useLeadline((s) => s.endGesture)
  const { t } = useWords()
  const field = useRef<HTMLInputElement>(null)
  return (
    <input
      ref={field}
      className="name"
      type="text"
      aria-label={t('name.label')}
      placeholder={t('name.none')}
      maxLength={200}
      value={name}
      spellCheck={false}
      onChange={(event) => {
        const to = event.currentTarget.value
        edit((d) => ({ ...d, name: to }), { gesture: 'name' })
      }}
      onKeyDown={(event) => event.key === 'Enter' && field.current?.blur()}
      onBlur={endGesture}
    />
  )
}
