/** Speeds of wind as people type them: `22 mph`, `10 m/s`, `20 kn`, `36 km/h`, or a plain number in the unit of the screen. */
import { EXACT, type Units } from '../../rules/index.ts'

/** m/s, exact by definition (NIST SP 811, B.8). */
const PER_SECOND: Readonly<Record<string, number>> = {
  mph: EXACT.mile / 3600,
  'mi/h': EXACT.mile / 3600,
  'm/s': 1,
  kn: 1852 / 3600,
  kt: 1852 / 3600,
  kts: 1852 / 3600,
  knots: 1852 / 3600,
  'km/h': 1 / 3.6,
  kmh: 1 / 3.6,
  kph: 1 / 3.6,
}

/** m/s of what an arrow key adds: 1 mph or 1 m/s, with Shift 5. */
export const speedStep = (units: Units, large: boolean): number =>
  (large ? 5 : 1) * PER_SECOND[units === 'imperial' ? 'mph' : 'm/s']!

/** m/s; null where it is no speed. */
export function parseSpeed(typed: string, units: Units): number | null {
  const [, number, unit = ''] = /^\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*([a-z/]*)\s*$/i.exec(typed) ?? []
  const per = PER_SECOND[unit.toLowerCase() || (units === 'imperial' ? 'mph' : 'm/s')]
  if (number === undefined || per === undefined) return null
  const speed = Number(number.replace(',', '.')) * per
  return Number.isFinite(speed) ? speed : null
}
