/** The picture of the scene as a file, in one of a few sizes or in one's own. */
import { Fragment, useId, useState } from 'react'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'

/** Width and height, px. */
const SIZES = ['1600x900', '1920x1080', '3840x2160', '2000x2000', 'own'] as const
/** Least and most of one's own size, px. */
const SIDE = { min: 16, max: 8192 } as const

export function PictureSize({
  disabled,
  take,
}: {
  readonly disabled: boolean
  readonly take: (width: number, height: number) => void
}) {
  const { t } = useWords(DOCUMENTS)
  const id = useId()
  const [size, setSize] = useState<(typeof SIZES)[number]>('1920x1080')
  const [own, setOwn] = useState<readonly [string, string]>(['3000', '1000'])
  const picture = (): void => {
    const [width, height] = size === 'own' ? own : size.split('x')
    take(sideOf(width), sideOf(height))
  }
  return (
    <div className="actions">
      <Select
        name={t('picture-size')}
        value={size}
        options={SIZES}
        wordOf={(one) => (one === 'own' ? t('picture-own') : one.replace('x', ' × '))}
        set={setSize}
      />
      {size === 'own' && (
        <div className="paper-options">
          {(['picture-width', 'picture-height'] as const).map((side, i) => (
            <Fragment key={side}>
              <label htmlFor={`${id}-${side}`}>{t(side)}</label>
              <input
                id={`${id}-${side}`}
                type="number"
                {...SIDE}
                value={own[i]}
                onChange={(e) => {
                  const { value } = e.currentTarget
                  setOwn(([w, h]) => (i === 0 ? [value, h] : [w, value]))
                }}
              />
            </Fragment>
          ))}
        </div>
      )}
      <button type="button" data-format="png" disabled={disabled} onClick={picture}>
        {t('png')}
      </button>
    </div>
  )
}

const sideOf = (typed: string | undefined): number =>
  Math.round(Math.min(SIDE.max, Math.max(SIDE.min, Number(typed) || 0)))
