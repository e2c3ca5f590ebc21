/** What the dock has to carry. Loaded with what says it, not before. */
import en from '../../rules/words/en/people-and-boat.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type PeopleAndBoatWord = keyof typeof en
export const PEOPLE_AND_BOAT = subject('people-and-boat', en)
