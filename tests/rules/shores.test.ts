/** A dozen ordinary shores (invented) that the demo shop can serve without a `stop`, and what an installer would expect on each. */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../rules/index.ts'
import { deriveFound } from '../support/at-once.ts'
import { SHORES } from '../support/shores.ts'
import { validate } from '../support/validate.ts'

describe('an ordinary shore', () => {
  for (const [design, expectations] of SHORES)
    it(`(${design.name}) is served without a stop`, () => {
      const dock = deriveFound(design, demoCatalog)
      expect(
        dock.findings.filter((finding) => finding.severity === 'stop').map((finding) => finding.text),
      ).toEqual([])
      expect(validate(dock, design, demoCatalog)).toEqual([])
      expectations(dock)
    })

  it('comes in a dozen', () => {
    expect(SHORES.length).toBeGreaterThanOrEqual(12)
  })
})
