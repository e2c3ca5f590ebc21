/** How tall a person is drawn wherever one stands beside a dock to tell its size, m: about the mean of grown people (judgment). `src/scene/person.ts` is modeled at it. */
export const PERSON_HEIGHT = 1.75
