/**
 * How far a wave is on its way to breaking, as a share: 0 where sines tell enough of it, 1 where it breaks.
 *
 * Sines fall behind as a wave steepens or the depth takes hold of it. Between a height that they are trusted with and the breaking one
 * what they say is brought over to what is known of breaking waves, geometrically: v = airy^(1 − s) · broken^s with s = ln(H/h₀)/ln(Hb/h₀).
 * No cliff, and growth with height all the way. h₀ is 0.64 of Hb: in shallow water half of the depth (judgment), which
 * comes to 1.23 times the stream function's force on the pile of Shore Protection Manual 1984, 7-III, at 2/3 of the depth
 * (`tests/reference/waves.test.ts`), never under it.
 */
import { BREAKING } from './limits.ts'

/** Part of the breaking height up to which linear waves are trusted. */
const TRUSTED = 0.5 / BREAKING

/** @param part height over breaking height, any number from 0 on; @returns from 0 to 1 */
export const towardBreaking = (part: number): number =>
  part <= TRUSTED ? 0 : part >= 1 ? 1 : Math.log(part / TRUSTED) / -Math.log(TRUSTED)

/** `linear` brought over to `broken`, never under it. */
export const blend = (linear: number, broken: number, share: number): number =>
  broken <= linear || share === 0
    ? linear
    : linear <= 0
      ? share * broken
      : linear * (broken / linear) ** share
