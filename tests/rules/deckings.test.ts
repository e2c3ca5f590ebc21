/** Decking that a customer chooses: which panels are laid, what they weigh and cost, worked by hand; and how they look in model files. */
import { NodeIO } from '@gltf-transform/core'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { glbOf } from '../../geometry/export/glb.ts'
import { usdzOf } from '../../geometry/export/usdz.ts'
import { type Catalog, demoCatalog, demoDesign, derive, parseCatalog } from '../../rules/index.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { parsed } from '../support/by-hand.ts'

const laid = (finish?: string, catalog: Catalog = demoCatalog) =>
  deriveAtOnce(
    parsed({ ...demoDesign, dock: { ...demoDesign.dock, ...(finish === undefined ? {} : { finish }) } }),
    catalog,
  )
const panels = (dock: ReturnType<typeof laid>) =>
  dock.parts
    .filter(({ kind }) => kind === 'deck-panel')
    .map(({ code, quantity, unitMass, price }) => [code, quantity, unitMass, price])

describe('five sections of 4 x 8 ft, two panels each', () => {
  it('in composite are ten panels of 27.575 kg for $1,980', () => {
    // Planks: seven of 1.2192 m and one of 0.9398 m, 146.05 x 25.4 mm, hollow, 8 mm thick: 9.4742 m x (3709.67 - 1222.47) mm2
    // = 0.023564 m3, at 1000 kg/m3 23.564 kg. Battens of cedar: 3 x 1.0668 m x 88.9 x 38.1 mm x 370 kg/m3 = 4.011 kg.
    expect(panels(laid('composite-gray'))).toEqual([['panel-4x4-gray', 10, 27.575, 198_000]])
  })

  it('cost and weigh that much more than in cedar, and nothing else is another', () => {
    const [cedar, gray] = [laid(), laid('composite-gray')]
    expect(panels(cedar)).toEqual([['panel-4x4', 10, 17.015, 149_000]])
    expect(gray.totals.price - cedar.totals.price).toBe(49_000)
    expect(gray.totals.mass - cedar.totals.mass).toBeCloseTo(10 * (27.575 - 17.015), 6)
    const others = ({ parts }: typeof cedar) => parts.filter(({ kind }) => kind !== 'deck-panel')
    expect(others(gray)).toEqual(others(cedar))
  })

  it('in what the frames carry anyway are as if nobody had asked', () => {
    expect(laid('cedar').parts).toEqual(laid().parts)
  })

  it('in a decking that nobody sells are a finding, and cedar', () => {
    const dock = derive(parsed({ ...demoDesign, dock: { ...demoDesign.dock, finish: 'gold' } }), demoCatalog)
    expect(dock.findings.filter(({ code }) => code === 'unknown-code')).toMatchObject([
      {
        severity: 'stop',
        values: { what: { value: 'decking' }, code: { value: 'gold' } },
        remedy: { patch: [{ op: 'remove', path: '/dock/finish' }] },
      },
    ])
    expect(panels(dock)).toEqual(panels(laid()))
  })
})

describe('a catalog', () => {
  const issues = (change: (c: { deckings: NonNullable<Catalog['deckings']> }) => void): string[] => {
    const copy = structuredClone(demoCatalog) as never
    change(copy)
    const read = parseCatalog(copy)
    return read.ok ? [] : read.issues.map(({ path }) => path)
  }

  it('without a choice has none, and what asks for one is told', () => {
    const { deckings: _, ...plain } = demoCatalog
    expect(laid(undefined, plain as Catalog).parts).toEqual(laid().parts)
    expect(laid('cedar', plain as Catalog).findings.map(({ code }) => code)).toContain('unknown-code')
  })

  it('lays only panels that it has, of the same size, each for one decking, in a color that is one', () => {
    expect(issues(() => {})).toEqual([])
    expect(issues((c) => (c.deckings[1]!.panels['panel-4x4'] = 'none'))).toEqual([
      'deckings[1].panels["panel-4x4"]',
    ])
    expect(issues((c) => (c.deckings[1]!.panels['panel-4x4'] = 'panel-5x4-gray'))).toContain(
      'deckings[1].panels["panel-4x4"]',
    )
    expect(issues((c) => (c.deckings[1]!.panels['panel-4x4'] = 'panel-4x4-brown'))).toEqual([
      'deckings[2].panels["panel-4x4"]',
    ])
    expect(issues((c) => (c.deckings[2]!.code = 'composite-gray'))).toEqual(['deckings[2].code'])
    expect(issues((c) => (c.deckings[2]!.color = 'brown'))).toEqual(['deckings[2].color'])
  })
})

describe('a model file', () => {
  it('shows the planks in their color, linear, and what they lie on as it is', async () => {
    const glb = await new NodeIO().readBinary(await glbOf(laid('composite-gray'), demoCatalog))
    const materials = glb.getRoot().listMaterials()
    // #8b8c88: 139, 140, 136 of 255 are 0.2582, 0.2623, 0.2462 of the light (IEC 61966-2-1).
    const own = materials.find((m) => m.getName() === 'decking_8b8c88')!
    expect(own.getBaseColorFactor()).toEqual([0.2582, 0.2623, 0.2462, 1])
    expect(materials.map((m) => m.getName())).toContain('wood')
    const cedar = await new NodeIO().readBinary(await glbOf(laid(), demoCatalog))
    expect(
      cedar
        .getRoot()
        .listMaterials()
        .map((m) => m.getName()),
    ).not.toContain('decking_8b8c88')
  })

  it('does in USDZ too', () => {
    const root = strFromU8(unzipSync(usdzOf(laid('composite-gray'), demoCatalog))['dock.usda']!)
    expect(root).toContain('def Material "decking_8b8c88"')
    expect(root).toContain('rel material:binding = </Dock/Looks/decking_8b8c88>')
    expect(root).toContain('(0.2582, 0.2623, 0.2462)')
  })
})
