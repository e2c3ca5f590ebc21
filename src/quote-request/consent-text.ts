import type { Catalog } from '../../rules/index.ts'
import { shorterTags } from '../../rules/words/shorter-tags.ts'

/** What a shop tells of what is sent to it, in one language. */
export interface ConsentText {
  readonly text: string
  /** A box beside it must be ticked. */
  readonly tick: boolean
  /** Where more of it stands. */
  readonly web: string | null
}

/** Null where the shop says nothing of it. @param lang BCP 47; its language without a region where the shop has no words for that */
export function consentIn({ shop }: Pick<Catalog, 'shop'>, lang: string): ConsentText | null {
  const consent = shop?.consent
  if (!consent) return null
  const own = consent.languages ?? {}
  const said = shorterTags(lang).find((tag) => Object.hasOwn(own, tag))
  return {
    text: (said !== undefined && own[said]) || consent.text,
    tick: consent.tick === true,
    web: consent.web ?? null,
  }
}
