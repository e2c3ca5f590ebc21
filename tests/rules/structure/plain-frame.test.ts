/**
 * The solver against the same analysis done another way (plain-frame.ts), on random frames.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buckling, type End6, type FrameModel, solveFrame } from '../../../rules/structure/index.ts'
import { expectRowsClose } from './compare.ts'
import { plainBuckling } from './plain-buckling.ts'
import { plainSolve } from './plain-frame.ts'
import { loadsOnRigidOnly, randomFrame } from './random-frames.ts'

const SEED = 20260114

const ends = (forces: readonly { from: readonly number[]; to: readonly number[] }[]): (readonly number[])[] =>
  forces.flatMap(({ from, to }) => [from, to])

function expectSame(model: FrameModel): void {
  const mine = solveFrame(model)
  const plain = plainSolve(model)
  expectRowsClose(mine.displacements, plain.displacements, 1e-6)
  expectRowsClose(mine.reactions, plain.reactions, 1e-6)
  expectRowsClose(ends(mine.memberForces), ends(plain.memberForces), 1e-6)
}

describe('solveFrame and plain dense analysis', () => {
  it(`agree on frames with rigid ends under every load (fast-check seed ${SEED})`, () => {
    fc.assert(fc.property(randomFrame({ joints: false }), expectSame), { seed: SEED, numRuns: 150 })
  })

  it(`agree on frames with joints of every kind and bars (fast-check seed ${SEED + 1})`, () => {
    fc.assert(fc.property(randomFrame({ joints: true }).map(loadsOnRigidOnly), expectSame), {
      seed: SEED + 1,
      numRuns: 200,
    })
  })

  it(`agree where members with springs at their ends are loaded (fast-check seed ${SEED + 2})`, () => {
    const springs = randomFrame({ joints: true }).map((model) => ({
      ...model,
      members: model.members.map((member) => ({
        ...member,
        axialOnly: false,
        ...(member.ends
          ? {
              ends: {
                // Across and along held, the rest as drawn: never loose.
                from: [1e6, 'rigid', 2e5, ...member.ends.from!.slice(3)] as unknown as NonNullable<
                  typeof member.ends.from
                >,
                to: ['rigid', 3e5, 'rigid', 'rigid', ...member.ends.to!.slice(4)] as unknown as NonNullable<
                  typeof member.ends.to
                >,
              },
            }
          : {}),
      })),
      memberLoads: model.members.map((_, member) => ({ member, perLength: [70, -110, 45] as const })),
    }))
    fc.assert(fc.property(springs, expectSame), { seed: SEED + 2, numRuns: 150 })
  })
})

/** Joints that leave no pressed member loose: some stiffness across, anything about. */
const heldAcross = (model: FrameModel): FrameModel => ({
  ...model,
  memberLoads: [],
  members: model.members.map((member) =>
    member.ends
      ? {
          ...member,
          ends: {
            from: [member.ends.from![0], 'rigid', 2e5, ...member.ends.from!.slice(3)] as unknown as End6,
            to: ['rigid', 3e5, 'rigid', ...member.ends.to!.slice(3)] as unknown as End6,
          },
        }
      : member,
  ),
})

function expectSameFactor(model: FrameModel): void {
  const axial = solveFrame(model).memberForces.map(({ to }) => to[0])
  const plain = plainBuckling(model, axial, 8)
  const mine = buckling(model)
  if (plain > 1e9) expect(mine).toBeGreaterThan(1e8)
  else expect(Math.abs(mine / plain - 1)).toBeLessThanOrEqual(1e-4)
}

describe('buckling and plain dense eigenvalues', () => {
  // The same eight elements: what is compared is condensing, joints and counting, not the elements.
  it(`agree to 1e-4 on random frames with rigid ends (fast-check seed ${SEED + 3})`, () => {
    const small = randomFrame({ joints: false })
      .filter(({ members }) => members.length <= 4)
      .map((model) => ({ ...model, memberLoads: [] }))
    fc.assert(fc.property(small, expectSameFactor), { seed: SEED + 3, numRuns: 25 })
  })

  it(`agree to 1e-4 on random frames with joints and bars (fast-check seed ${SEED + 4})`, () => {
    const small = randomFrame({ joints: true })
      .filter(({ members }) => members.length <= 5 && members.some(({ ends }) => ends))
      .map(heldAcross)
    fc.assert(fc.property(small, expectSameFactor), { seed: SEED + 4, numRuns: 25 })
  })
})
