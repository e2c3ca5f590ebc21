/** Masses as people type them: `2,000 lb` is not parted, `2000 lb`, `900 kg`, `1.2 t`, or a plain number in the unit of the screen. */
import { EXACT, type Units } from '../../rules/index.ts'

/** kg */
const KILOGRAMS: Readonly<Record<string, number>> = {
  lb: EXACT.pound,
  lbs: EXACT.pound,
  pounds: EXACT.pound,
  kg: 1,
  t: 1000,
}

/** kg of what an arrow key adds: 50 lb or 25 kg, with Shift ten times that. */
export const massStep = (units: Units, large: boolean): number =>
  (large ? 10 : 1) * (units === 'imperial' ? 50 * EXACT.pound : 25)

/** kg; null where it is no mass. */
export function parseMass(typed: string, units: Units): number | null {
  const [, number, unit = ''] = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*([a-z]*)\s*$/i.exec(typed) ?? []
  const per = KILOGRAMS[unit.toLowerCase() || (units === 'imperial' ? 'lb' : 'kg')]
  if (number === undefined || per === undefined) return null
  const kg = Number(number.replace(',', '.')) * per
  return Number.isFinite(kg) ? kg : null
}
