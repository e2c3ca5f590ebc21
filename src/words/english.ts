/** All that is said in English, by subject: what a translator begins with, and what another language is held against. */
import basis from '../../rules/words/en/basis.json' with { type: 'json' }
import bedPlan from '../../rules/words/en/bed-plan.json' with { type: 'json' }
import boats from '../../rules/words/en/boats.json' with { type: 'json' }
import catalogEditor from '../../rules/words/en/catalog-editor.json' with { type: 'json' }
import catalogHints from '../../rules/words/en/catalog-hints.json' with { type: 'json' }
import depthSearch from '../../rules/words/en/depth-search.json' with { type: 'json' }
import depths from '../../rules/words/en/depths.json' with { type: 'json' }
import dock from '../../rules/words/en/dock.json' with { type: 'json' }
import documents from '../../rules/words/en/documents.json' with { type: 'json' }
import drawing from '../../rules/words/en/drawing.json' with { type: 'json' }
import existing from '../../rules/words/en/existing.json' with { type: 'json' }
import extrasPlaced from '../../rules/words/en/extras-placed.json' with { type: 'json' }
import figures from '../../rules/words/en/figures.json' with { type: 'json' }
import findings from '../../rules/words/en/findings.json' with { type: 'json' }
import fit from '../../rules/words/en/fit.json' with { type: 'json' }
import forces from '../../rules/words/en/forces.json' with { type: 'json' }
import gauge from '../../rules/words/en/gauge.json' with { type: 'json' }
import legs from '../../rules/words/en/legs.json' with { type: 'json' }
import limits from '../../rules/words/en/limits.json' with { type: 'json' }
import loads from '../../rules/words/en/loads.json' with { type: 'json' }
import obstacles from '../../rules/words/en/obstacles.json' with { type: 'json' }
import papers from '../../rules/words/en/papers.json' with { type: 'json' }
import peopleAndBoat from '../../rules/words/en/people-and-boat.json' with { type: 'json' }
import planEditor from '../../rules/words/en/plan-editor.json' with { type: 'json' }
import reasons from '../../rules/words/en/reasons.json' with { type: 'json' }
import record from '../../rules/words/en/record.json' with { type: 'json' }
import request from '../../rules/words/en/request.json' with { type: 'json' }
import scene from '../../rules/words/en/scene.json' with { type: 'json' }
import screen from '../../rules/words/en/screen.json' with { type: 'json' }
import soundingsFile from '../../rules/words/en/soundings-file.json' with { type: 'json' }
import stake from '../../rules/words/en/stake.json' with { type: 'json' }
import stands from '../../rules/words/en/stands.json' with { type: 'json' }
import start from '../../rules/words/en/start.json' with { type: 'json' }
import structure from '../../rules/words/en/structure.json' with { type: 'json' }
import terminal from '../../rules/words/en/terminal.json' with { type: 'json' }
import usualNames from '../../rules/words/en/usual-names.json' with { type: 'json' }
import wants from '../../rules/words/en/wants.json' with { type: 'json' }
import waterside from '../../rules/words/en/waterside.json' with { type: 'json' }
import waves from '../../rules/words/en/waves.json' with { type: 'json' }
import wholeDocks from '../../rules/words/en/whole-docks.json' with { type: 'json' }
import type { SubjectWords } from '../../rules/words/language.ts'

export const ENGLISH_WORDS: Readonly<Record<string, SubjectWords>> = {
  basis,
  boats,
  'catalog-editor': catalogEditor,
  'catalog-hints': catalogHints,
  'depth-search': depthSearch,
  'bed-plan': bedPlan,
  depths,
  dock,
  documents,
  drawing,
  existing,
  'extras-placed': extrasPlaced,
  figures,
  findings,
  fit,
  forces,
  legs,
  gauge,
  limits,
  loads,
  obstacles,
  papers,
  'people-and-boat': peopleAndBoat,
  'plan-editor': planEditor,
  reasons,
  record,
  request,
  scene,
  screen,
  'soundings-file': soundingsFile,
  stake,
  stands,
  start,
  structure,
  terminal,
  'usual-names': usualNames,
  wants,
  waterside,
  waves,
  'whole-docks': wholeDocks,
}
