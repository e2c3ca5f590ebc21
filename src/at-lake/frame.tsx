/** What is around every screen of the day: the way back, where one is, the way home; and where what was written down is kept, if it is not. */
import { type ReactNode, useEffect, useRef } from 'react'
import { Sign } from '../ui/controls.tsx'
import { useSay } from './lake.ts'

interface FrameProps {
  readonly title: string
  /** How far one is, in words. */
  readonly progress?: string | undefined
  readonly back?: (() => void) | undefined
  readonly home?: (() => void) | undefined
  readonly children: ReactNode
}

export function Frame({ title, progress, back, home, children }: FrameProps) {
  const { t } = useSay()
  return (
    <>
      <header>
        {back ? (
          <button type="button" className="icon" aria-label={t('back')} onClick={back}>
            <Sign d="M11 3 5 9l6 6" />
          </button>
        ) : (
          <span />
        )}
        <p>
          {title}
          {progress && <span className="progress">{progress}</span>}
        </p>
        {home ? (
          <button type="button" className="icon" aria-label={t('home')} onClick={home}>
            <Sign d="M3 9 9 3.5 15 9M5 8v6.5h8V8" />
          </button>
        ) : (
          <span />
        )}
      </header>
      <main>{children}</main>
    </>
  )
}

interface HeadProps {
  readonly of: string
  readonly where?: string | undefined
}

/** The question of a screen: read out when it comes, and in sight. */
export function Head({ of, where }: HeadProps) {
  const head = useRef<HTMLHeadingElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: at each other question.
  useEffect(() => {
    head.current?.focus({ preventScroll: true })
    head.current?.closest('.lake-day')?.scrollIntoView({ block: 'start' })
  }, [of])
  return (
    <div>
      <h2 ref={head} tabIndex={-1}>
        {of}
      </h2>
      {where && <p className="where">{where}</p>}
    </div>
  )
}

/** One figure, the biggest thing on the screen. */
export function Figure({
  value,
  of,
  less = false,
}: {
  readonly value: string
  readonly of: string
  readonly less?: boolean
}) {
  return (
    <p className={less ? 'figure less' : 'figure'}>
      <b>{value}</b>
      <span>{of}</span>
    </p>
  )
}
