/** A case for each check of what a lake's rules allow, and of the room that boats need. */
import { demoCatalog } from '../../../rules/index.ts'
import { templatePlan } from '../../../rules/plan/templates.ts'
import { type Cases, flat, slope } from './support.ts'

const berth = (more: Record<string, unknown>) => ({
  id: 'a',
  length: 5,
  height: 0.6,
  draught: 0.3,
  mass: 150,
  section: 's4',
  edge: 'left',
  ...more,
})
const LEFT = { head: { shape: 'left', sections: 1 } }
const line = (y: number, distance = 0) => ({ limits: { sides: [{ from: [0, y], to: [10, y], distance }] } })

// A boulder before the bow, a bank behind, and so much water abeam.
const beside = (y: number) => ({
  site: {
    ...flat(1.2),
    obstacles: [{ id: 'rock', kind: 'boulder', x: 14, y: 1.5, length: 1, width: 1, height: 0.9 }],
    ...line(y),
  },
  dock: { boats: [berth({})] },
})
const slip = (beam: number) => ({
  site: flat(1.2),
  dock: {
    plan: templatePlan('U', { frame: demoCatalog.frames[0]!, reach: 3, ramp: false }),
    start: 2,
    boats: [berth({ section: 's3', length: 3, beam })],
  },
})

export const limits: Cases = {
  // Four sections of 2.4384 from 1.05 on, three gaps of 0.0254: 10.8798.
  'limit-reach': {
    raise: { site: { limits: { reach: 10.5 } } },
    neighbor: { site: { limits: { reach: 10.88 } } },
    tells: {
      parts: ['s5'],
      values: { reach: 10.8798, most: 10.5, by: 0.3798 },
      where: { '/dock/sections': 4 },
    },
    helped: true,
  },
  'limit-share': {
    raise: { site: { limits: { share: 0.1 }, waterWidth: 108.7 } },
    neighbor: { site: { limits: { share: 0.1 }, waterWidth: 108.8 } },
    tells: {
      parts: ['s5'],
      values: { reach: 10.8798, most: 10.87, part: 0.1, width: 108.7 },
      where: { '/dock/sections': 4 },
    },
    helped: true,
  },
  // 1.2192 of the run, a gap of 0.0254, and a section of 2.4384 across.
  'limit-width': {
    raise: { site: { limits: { width: 3.68 } }, dock: LEFT },
    neighbor: { site: { limits: { width: 3.69 } }, dock: LEFT },
    tells: {
      parts: ['s1', 's2', 's3', 's4', 's5', 'h1'],
      values: { width: 3.683, most: 3.68 },
      where: { '/dock/head': { shape: 'straight', sections: 0 } },
    },
    helped: true,
  },
  // Four times 2.4384 x 1.2192, and of the ramp the 1.05 that is over the lake.
  'limit-area': {
    raise: { site: { limits: { area: 13.17 } } },
    neighbor: { site: { limits: { area: 13.18 } } },
    tells: { parts: [], values: { area: 13.17176, most: 13.17 }, where: { '/dock/sections': 4 } },
    helped: true,
  },
  // From 2 to 11.8298, 1 in 10, the lake at its level.
  'limit-depth': {
    raise: {
      site: { ...slope(0.1), levels: { low: 0, high: 0 }, limits: { depth: 1.18 } },
      dock: { start: 2 },
    },
    neighbor: {
      site: { ...slope(0.1), levels: { low: 0, high: 0 }, limits: { depth: 1.19 } },
      dock: { start: 2 },
    },
    tells: {
      parts: ['s5'],
      values: { depth: 1.18298, most: 1.18 },
      where: { '/dock/sections': 4 },
    },
    helped: true,
  },
  // The head's left end lies at 0.6096 + 0.0254 + 2.4384 = 3.0734.
  'limit-side': {
    raise: { site: line(3, 1), dock: LEFT },
    neighbor: { site: line(4.08, 1), dock: LEFT },
    tells: {
      parts: ['h1'],
      values: { line: 1, clear: -0.0734, least: 1, short: 1.0734 },
      where: { '/dock/head/shape': 'right' },
    },
    helped: true,
  },
  // 0.6096 + 0.1 + 0.35 x 5 + 1.5 x 5 = 9.9596.
  'boat-no-fairway': {
    raise: beside(9.95),
    neighbor: beside(9.97),
    tells: {
      parts: ['s4'],
      values: { section: 's4', boat: 5, room: 7.5, by: 'obstacle' },
      where: { '/dock/boats/0/section': 's5', '/dock/boats/0/edge': 'right' },
    },
    helped: true,
  },
  // Two sections across with a gap before each, less the arm's width: 2 x 2.4638 - 1.2192 = 3.7084.
  'slip-narrow': {
    raise: slip(3.31),
    neighbor: slip(3.3),
    tells: {
      parts: ['s3'],
      values: { section: 's3', room: 3.7084, beam: 3.31, least: 3.71 },
      where: { '/dock/boats/0/section': 's3', '/dock/boats/0/edge': 'right' },
    },
    helped: true,
  },
}
