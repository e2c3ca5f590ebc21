/** How to measure your shore, in plain steps. */
import { useMoreWords } from '../words/use-more-words.ts'

const STEPS = ['guide.1', 'guide.2', 'guide.3', 'guide.4', 'guide.5', 'guide.6'] as const

export function Guide() {
  const { more } = useMoreWords()
  return (
    <div className="guide">
      <p>{more('guide.intro')}</p>
      <ol className="steps">
        {STEPS.map((step) => (
          <li key={step}>{more(step)}</li>
        ))}
      </ol>
      <p className="care">{more('guide.safe')}</p>
    </div>
  )
}
