/** Small plans of the head shapes, seen from above: shore below, lake above. */
import type { Design } from '../../rules/index.ts'

export type HeadShape = NonNullable<Design['dock']['head']>['shape']

/** Sections as squares of a grid: column, row from the shore. */
const PLANS: Readonly<Record<HeadShape, readonly (readonly [column: number, row: number])[]>> = {
  straight: [],
  left: [[-1, 3]],
  right: [[1, 3]],
  tee: [
    [-1, 3],
    [1, 3],
  ],
  wide: [
    [-1, 2],
    [-1, 3],
  ],
}

export function HeadPicture({ shape }: { readonly shape: HeadShape }) {
  const run = [0, 1, 2, 3].map((row) => [0, row] as const)
  return (
    <svg className="head-picture" viewBox="0 0 44 44" aria-hidden="true">
      <path className="shore" d="M2 40q10-4 20-1t20-2" />
      {run.map(([, row]) => (
        <rect key={row} x={18.5} y={28.5 - row * 8.5} width={7} height={7.5} />
      ))}
      {PLANS[shape].map(([column, row]) =>
        shape === 'wide' ? (
          <rect key={`${column} ${row}`} x={18.5 + column * 8} y={28.5 - row * 8.5} width={7} height={7.5} />
        ) : (
          <rect key={`${column} ${row}`} x={column < 0 ? 9 : 26.5} y={3} width={8.5} height={7} />
        ),
      )}
    </svg>
  )
}
