/** What of a dock is there already, for whoever packs and labels the rest. */
import type { Dock } from '../dock.ts'

/** Ids of sections, legs and pairs whose frame, tube or brace is owned already, by kind of part. */
export function ownedPlaces({ existing }: Pick<Dock, 'existing'>): (kind: string, id: string) => boolean {
  const owned = new Set(existing?.used.flatMap(({ kind, of }) => of.map((id) => `${kind}\n${id}`)))
  return (kind, id) => owned.has(`${kind}\n${id}`)
}
