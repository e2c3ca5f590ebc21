/**
 * Random valid designs on both catalogs, made so that every finding comes up: shores gentle and steep, humps, soft bottoms over firm,
 * soundings on a line and off it, every head, explicit plans (some of them broken), settings by hand, codes that no shop has.
 */
import fc from 'fast-check'
import { straightFrames } from '../../rules/catalog/straight.ts'
import { type Catalog, type Design, parseDesign } from '../../rules/index.ts'
import { templatePlan } from '../../rules/plan/templates.ts'
import { catalogs } from './catalogs.ts'

export interface Case {
  readonly design: Design
  readonly catalog: Catalog
}

/** Evenly spread, to the millimeter: doubles by their bits would nearly all be next to nothing. */
const meters = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((mm) => mm / 1000)
/** `value` once in `n`. */
const once = <T>(n: number, value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.integer({ min: 1, max: n }).chain((k) => (k === 1 ? value : fc.constant(undefined)))
const bottom = fc.constantFrom('rock', 'gravel', 'sand', 'clay', 'muck')

type Raw = Record<string, unknown>
/** Absent instead of undefined. */
const given = (raw: Raw): Raw =>
  Object.fromEntries(Object.entries(raw).filter(([, value]) => value !== undefined))

const sounding = (distance: number, offset: number, depth: number): fc.Arbitrary<Raw> =>
  fc
    .record({ soft: once(8, meters(0, 0.8)), bottom: once(8, bottom) })
    .map(({ soft, bottom: kind }) =>
      given({ distance, offset, depth, firm: soft === undefined ? undefined : depth + soft, bottom: kind }),
    )

/** A falling profile with the odd hump, from the bank to `reach`. */
const profile = fc
  .record({
    bank: once(3, meters(0.2, 3)),
    bankSlope: meters(0.05, 1.2),
    slopes: fc.array(meters(-0.03, 0.35), { minLength: 2, maxLength: 8 }),
    steps: fc.array(
      fc.oneof({ weight: 6, arbitrary: meters(1, 5) }, { weight: 1, arbitrary: meters(5, 9) }),
      { minLength: 8, maxLength: 8 },
    ),
    gentle: fc.boolean(),
  })
  .map(({ bank, bankSlope, slopes, steps, gentle }) => {
    const points: [number, number][] = []
    if (bank !== undefined || bankSlope < 0.8) points.push([-(bank ?? 3), -(bank ?? 3) * bankSlope])
    points.push([0, 0])
    let x = 0
    let depth = 0
    slopes.forEach((slope, i) => {
      x += steps[i]!
      depth += steps[i]! * (gentle ? slope * 0.4 : slope)
      points.push([Math.round(x * 1000) / 1000, Math.round(depth * 1000) / 1000])
    })
    return points
  })

const soundings: fc.Arbitrary<Raw[]> = fc
  .record({
    points: profile,
    offset: once(6, meters(-3, 3)),
    area: once(6, meters(1.5, 4)),
    wobble: fc.array(meters(-0.3, 0.3), { minLength: 60, maxLength: 60 }),
    slip: once(12, fc.constantFrom('twice', 'ledge', 'height')),
  })
  .chain(({ points, offset, area, wobble, slip }) => {
    // Now and then one was sounded twice, or beside a ledge, or a height taken for a depth.
    const last = points.at(-2)!
    if (slip === 'height') points = points.map((p) => (p === last ? [p[0], -p[1] - 0.4] : p))
    if (area === undefined)
      return fc.tuple(
        ...points.map(([x, d]) => sounding(x, offset ?? 0, d)),
        ...(slip === 'twice' ? [sounding(last[0] + 0.05, offset ?? 0, last[1] + 0.9)] : []),
        ...(slip === 'ledge' ? [sounding(last[0] + 0.4, offset ?? 0, last[1] + 2)] : []),
      )
    let k = 0
    const spots = points.flatMap(([x, d]) =>
      [-area, 0, area].map((y): [number, number, number] => [
        x + wobble[k]!,
        y + wobble[(k + 7) % 60]!,
        d + wobble[k++ % 60]!,
      ]),
    )
    return fc.tuple(...spots.map(([x, y, d]) => sounding(x, y, d)))
  })

const site = fc
  .record({
    soundings,
    soundingError: meters(0, 0.2),
    low: meters(-0.8, 0),
    range: meters(0, 0.7),
    bottom,
    crossSlope: once(3, meters(-0.5, 0.5)),
    shore: once(
      3,
      fc.record({
        kind: fc.constantFrom('bank', 'wall', 'wall'),
        height: fc.oneof(meters(0.1, 2), meters(0.3, 0.8), meters(-0.5, 0.4)),
      }),
    ),
    bearing: once(20, meters(0, 360)),
    wind: once(
      5,
      fc
        .record({
          speed: meters(0, 30),
          fetch: fc.oneof(meters(0, 800), meters(0, 20_000)),
          depth: once(2, fc.oneof(fc.constant(null), meters(0, 6))),
          from: once(8, meters(-180, 180)),
        })
        .map(given),
    ),
    wake: once(10, meters(0, 0.6)),
  })
  .map(({ low, range, ...rest }) =>
    given({
      ...rest,
      levels: { low, high: Math.round((low + range) * 1000) / 1000 },
      // Of the levels that stand there, so that all else is drawn as it was.
      assumed: range > 0.6 ? ['levels'] : undefined,
    }),
  )

const EDGES = ['start', 'end', 'left', 'right'] as const

/** A plan grown from a root by hanging sections on earlier ones; now and then on one that is not there. */
const plan = (catalog: Catalog): fc.Arbitrary<Raw[]> =>
  fc
    .record({
      ramp: fc.boolean(),
      aside: once(6, meters(-0.8, 0.8)),
      items: fc.array(
        fc.record({
          on: fc.nat(),
          edge: fc.constantFrom(...EDGES, 'end', 'end'),
          with: fc.constantFrom(...EDGES, 'start', 'start'),
          along: fc.oneof(fc.constant(0), meters(-2.5, 3)),
          frame: once(6, fc.constantFrom(...catalog.frames.map((f) => f.code), 'no-such-frame')),
          lost: once(25, fc.constant(true)),
        }),
        { minLength: 1, maxLength: 9 },
      ),
    })
    .map(({ ramp, aside, items }) => {
      const rows: Raw[] = ramp
        ? [
            { id: 's1', on: null, role: 'ramp' },
            given({ id: 's2', on: 's1', edge: 'end', with: 'start', along: aside }),
          ]
        : [{ id: 's1', on: null }]
      const first = rows.length
      items.forEach((item, i) => {
        const hosts = rows.slice(ramp ? 1 : 0)
        const host = item.lost ? 'nobody' : (hosts[item.on % hosts.length]!.id as string)
        rows.push(
          given({
            id: `s${first + i + 1}`,
            on: host,
            edge: item.edge,
            with: item.with,
            along: item.along,
            frame: item.frame,
          }),
        )
      })
      return rows
    })

const run = fc
  .record({
    sections: fc.integer({ min: 1, max: 9 }),
    ramp: fc.boolean(),
    shape: fc.constantFrom('straight', 'straight', 'left', 'right', 'tee', 'wide'),
    n: fc.integer({ min: 0, max: 4 }),
  })
  .map(({ sections, ramp, shape, n }): Raw => {
    const run = ramp ? Math.max(2, sections) : sections
    const legged = run - (ramp ? 1 : 0)
    const count =
      shape === 'straight' ? 0 : shape === 'tee' ? n - (n % 2) : shape === 'wide' ? Math.min(n, legged) : n
    return { sections: run, ramp, head: { shape, sections: count } }
  })

const LEGS = ['s2.start.left', 's2.end.right', 's3.end.left', 's3.end.right', 's4.end.left', 'h1.end.left']
const PAIRS = ['s2.start', 's2.end', 's3.end', 's4.end', 's5.end', 'h1.end']

const extras = (catalog: Catalog): fc.Arbitrary<Record<string, number>> =>
  fc
    .record({
      counts: fc.array(
        fc.oneof({ weight: 4, arbitrary: fc.nat({ max: 4 }) }, { weight: 1, arbitrary: fc.nat({ max: 80 }) }),
        {
          minLength: catalog.extras.length,
          maxLength: catalog.extras.length,
        },
      ),
      unknown: once(15, fc.constant(1)),
    })
    .map(({ counts, unknown }) => ({
      ...Object.fromEntries(catalog.extras.map((extra, i) => [extra.code, counts[i]!])),
      ...(unknown && { 'no-such-extra': unknown }),
    }))

const dock = (catalog: Catalog): fc.Arbitrary<Raw> =>
  fc
    .record({
      deckHeight: fc.oneof(
        { weight: 5, arbitrary: meters(0.35, 0.9) },
        { weight: 1, arbitrary: meters(-0.2, 2.5) },
      ),
      frame: once(40, fc.constant('no-such-frame')),
      frameIndex: fc.nat(),
      shape: fc.oneof(
        { weight: 4, arbitrary: run },
        { weight: 1, arbitrary: plan(catalog).map((items): Raw => ({ plan: items })) },
      ),
      start: once(4, fc.oneof(meters(-4, 8), meters(6, 25), meters(15, 40))),
      extras: extras(catalog),
      placed: once(
        5,
        fc.array(
          fc.record({
            code: fc.constantFrom(...catalog.extras.map((e) => e.code), 'no-such-extra'),
            section: fc.constantFrom('s1', 's2', 's3', 'h1', 'zz'),
            edge: fc.constantFrom(...EDGES),
            along: meters(0, 3),
          }),
          { maxLength: 4 },
        ),
      ),
      finish: once(3, fc.constantFrom(...(catalog.deckings ?? []).map((d) => d.code), 'no-such-decking')),
      pad: once(4, fc.constantFrom(...catalog.pads.map((p) => p.code), 'no-such-pad')),
      reserve: once(3, meters(0, 0.9)),
      load: once(30, meters(0, 5000)),
      boat: once(
        12,
        fc.record({
          length: meters(3, 9),
          height: meters(0.05, 1),
          draught: meters(0.15, 0.9),
          mass: meters(80, 3000),
          side: fc.constantFrom('left', 'right'),
        }),
      ),
      first: once(3, fc.constantFrom('left', 'right')),
      none: once(5, fc.subarray([...PAIRS, 'no.such.pair'], { minLength: 1, maxLength: 3 })),
      overrides: once(
        5,
        fc.dictionary(
          fc.constantFrom(...LEGS, 'no.such.leg'),
          fc.constantFrom(...catalog.legs.map((l) => l.length), 1.234).map((stock) => ({ stock })),
          { maxKeys: 3, noNullPrototype: true },
        ),
      ),
      boats: once(
        8,
        fc
          .array(
            fc.record({
              kind: once(2, fc.constantFrom('fishing', 'runabout', 'pontoon')),
              length: meters(3, 9),
              beam: once(2, meters(1, 3)),
              height: meters(0.05, 1),
              draught: meters(0.15, 0.9),
              mass: meters(80, 3000),
              section: fc.constantFrom('s1', 's2', 's3', 's4', 'h1', 'zz'),
              edge: fc.constantFrom(...EDGES),
              along: once(3, meters(0, 3)),
            }),
            { minLength: 1, maxLength: 3 },
          )
          .map((list) => list.map((one, i): Raw => given({ id: `b${i + 1}`, ...one }))),
      ),
    })
    .map(({ frame, frameIndex, shape, first, none, ...rest }) =>
      given({
        ...rest,
        ...shape,
        start: rest.start ?? null,
        frame: frame ?? straightFrames(catalog)[frameIndex % straightFrames(catalog).length]!.code,
        bracing: first || none ? given({ first, none }) : undefined,
      }),
    )

const limits = fc
  .record({
    reach: once(3, meters(2, 20)),
    width: once(3, meters(1, 8)),
    area: once(3, meters(3, 40)),
    depth: once(3, meters(0.2, 2.5)),
    share: once(2, meters(0.01, 1)),
    sides: once(
      2,
      fc.array(
        fc.record({
          from: fc.tuple(meters(0, 3), meters(-9, 9)),
          to: fc.tuple(meters(5, 20), meters(-9, 9)),
          distance: meters(0, 6),
        }),
        { minLength: 1, maxLength: 2 },
      ),
    ),
  })
  .map(given)

/** A boat between two arms. */
const slip = (catalog: Catalog): fc.Arbitrary<Raw> =>
  fc
    .record({
      name: fc.constantFrom('U' as const, 'double-slip' as const),
      frame: fc.constantFrom(...straightFrames(catalog)),
      tight: meters(-0.1, 0.6),
      side: fc.constantFrom('left', 'right'),
    })
    .map(({ name, frame, tight, side }) => ({
      frame: frame.code,
      plan: templatePlan(name, { frame, reach: 3, ramp: false }),
      boats: [
        {
          id: 'b1',
          length: 3,
          // Two sections across and two gaps of an inch, less the arm.
          beam: Math.round((2 * frame.length + 0.05 - frame.width - 0.1 - tight) * 1000) / 1000,
          height: 0.5,
          draught: 0.3,
          mass: 300,
          section: 's3',
          edge: side,
        },
      ],
    }))

/** A random valid design and the catalog that it is for. */
export const anyCase: fc.Arbitrary<Case> = fc.constantFrom(...catalogs).chain((catalog) =>
  fc
    .record({
      site,
      dock: dock(catalog),
      catalog: once(
        6,
        fc.record({
          id: fc.constantFrom(catalog.id, 'other-shop'),
          version: fc.constantFrom(catalog.edition, 'older'),
        }),
      ),
      // Last, so that all else is drawn as it was.
      limits: once(4, fc.record({ limits, waterWidth: once(2, meters(10, 200)) }).map(given)),
      slip: once(20, slip(catalog)),
    })
    .map(({ limits: held, slip: arms, ...parts }) => {
      const site = { ...parts.site, ...held }
      const all = { ...parts, site, dock: { ...parts.dock, ...arms } }
      return caseOf(
        parsedDesign(given({ format: 'leadline/design', version: 1, name: 'random', ...all })),
        catalog,
      )
    }),
)

/** The catalog is told by its name only where a failing case is printed. */
const caseOf = (design: Design, catalog: Catalog): Case => ({
  design,
  catalog,
  ...{ [fc.toStringMethod]: () => `${catalog.id} ${JSON.stringify(design)}` },
})

/** Parses or throws: what is generated here must be valid. */
export function parsedDesign(raw: unknown): Design {
  const parsed = parseDesign(raw)
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))
  return parsed.value
}

/** Only a straight run by rule, for what is said of straight docks. */
export const straightCase: fc.Arbitrary<Case> = anyCase.map(({ design, catalog }) => {
  const { plan: _plan, placed: _placed, ...dock } = design.dock
  const ramp = dock.ramp ?? false
  return {
    catalog,
    design: {
      ...design,
      dock: {
        ...dock,
        ramp,
        sections: Math.max(ramp ? 2 : 1, dock.sections ?? 3),
        head: { shape: 'straight', sections: 0 },
      },
    },
  }
})
