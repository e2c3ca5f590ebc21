/** The boats that a dock is asked for, as the papers tell them. */
import { boatsIn } from '../../geometry/boats.ts'
import { BOATS, boatName, boatWater } from '../../rules/words/boats.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'

/** 'Pontoon, 20 ft: 1 ft 2 in under the keel at low water', one for each. */
export function useBoats(): readonly string[] {
  const project = useLeadline((s) => s.project)
  const { t, reader } = useWords(BOATS)
  const { bed, design } = project
  return boatsIn(project).map((berth) =>
    t('told', {
      boat: text(boatName(berth.boat, reader)),
      water: text(boatWater(berth, bed, design.site.levels, reader)),
    }),
  )
}
