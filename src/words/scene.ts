/** The 3D scene's own words; it shares those of measures with the strip. Loaded with what says it, not before. */
import en from '../../rules/words/en/scene.json' with { type: 'json' }
import { subject } from '../../rules/words/messages.ts'

export type SceneWord = keyof typeof en
export const SCENE = subject('scene', en)
