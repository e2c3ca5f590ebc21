/** Requests that wait for a connection: told as what they are, sent when there is one, to be sent at once or taken back at any time. */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { Say } from '../../../rules/index.ts'
import { useWords } from '../../ui/use-words.ts'
import { count, text } from '../../words/index.ts'
import { REQUEST, type RequestWord } from '../../words/request.ts'
import { post } from '../send-request.ts'
import { CHANGED, goesByItself, type Queue, type Told, tellWaiting, type Waiting } from './queue.ts'
import { alone, sendWaiting } from './send-waiting.ts'

interface Props {
  readonly address: string
  readonly queue: Queue
  /** It is tried when this first stands there. */
  readonly atOnce: boolean
}

/** How often it is tried while the page is in sight: a browser may not notice that it has a connection again. ms */
const EVERY = 60_000

export function WaitingList(props: Props) {
  const { t } = useWords(REQUEST)
  const { waiting, told, sending, send, takeBack, done } = useWaiting(props)
  if (waiting.length === 0 && told.length === 0) return null
  return (
    <div className="notices" role="status">
      {told.map((one) => (
        <div className="notice" key={one.id}>
          <div>
            <p>{sentText(one, t)}</p>
            <button type="button" onClick={() => done(one.id)}>
              {t('request.done')}
            </button>
          </div>
        </div>
      ))}
      {waiting.map((one) => (
        <div className="notice bad" key={one.body.id}>
          <div>
            <p>
              <Line of={one} />
            </p>
            <div className="actions">
              <button type="button" disabled={sending} onClick={() => send(one.body.id)}>
                {t(sending ? 'request.sending' : 'request.send-now')}
              </button>
              <button type="button" onClick={() => takeBack(one.body.id)}>
                {t('request.take-back')}
              </button>
            </div>
          </div>
        </div>
      ))}
    </div>
  )
}

const numberOf = (id: string): string => id.slice(0, 8)

const sentText = ({ id, reference }: Told, t: Say<RequestWord>): string => {
  const number = text(numberOf(id))
  return reference === null
    ? t('request.waited-sent', { number })
    : t('request.waited-sent-as', { number, reference: text(reference) })
}

function Line({ of: one }: { readonly of: Waiting }) {
  const { t, language } = useWords(REQUEST)
  const { id, at } = one.body
  const values = {
    number: text(numberOf(id)),
    day: text(new Date(at).toLocaleString(language.tag, { dateStyle: 'medium', timeStyle: 'short' })),
  }
  if (one.answer !== undefined) return t('request.waits-refused', { ...values, status: count(one.answer) })
  return t(goesByItself(one, Date.now()) ? 'request.waits' : 'request.waits-old', values)
}

/** What waits for the address, tried at once, where a connection comes, where the page comes into sight, and every minute. */
function useWaiting({ address, queue, atOnce }: Props) {
  const [waiting, setWaiting] = useState(() => queue.list())
  const [told, setTold] = useState<readonly Told[]>([])
  const [sending, setSending] = useState(false)
  const busy = useRef(false)
  const go = useCallback(
    async (wanted: (one: Waiting) => boolean): Promise<void> => {
      if (busy.current) return
      busy.current = true
      setSending(true)
      const taken = await alone(() => sendWaiting(queue, wanted, ({ body }) => post(address, body)), [])
      busy.current = false
      setSending(false)
      setTold((before) => [...before, ...taken])
      setWaiting(queue.list())
      for (const one of taken) tellWaiting(one)
    },
    [address, queue],
  )
  useEffect(() => {
    const stop = new AbortController()
    const { signal } = stop
    const again = (): void => {
      if (!document.hidden && navigator.onLine) void go((one) => goesByItself(one, Date.now()))
    }
    const look = (): void => setWaiting(queue.list())
    for (const type of [CHANGED, 'storage']) addEventListener(type, look, { signal })
    addEventListener('online', again, { signal })
    document.addEventListener('visibilitychange', again, { signal })
    const timer = setInterval(() => queue.list().length > 0 && again(), EVERY)
    if (atOnce) again()
    return () => {
      stop.abort()
      clearInterval(timer)
    }
  }, [queue, go, atOnce])
  return {
    waiting,
    told,
    sending,
    send: (id: string) => void go(({ body }) => body.id === id),
    takeBack(id: string) {
      queue.drop(id)
      tellWaiting(null)
    },
    done: (id: string) => setTold((before) => before.filter((one) => one.id !== id)),
  }
}
