import { leastOverlap } from '../layout/index.ts'
import { type Check, COMMON, meters, text } from './check.ts'

/** Two edges share too little for a pair of hooks, or nothing. */
export const jointShort: Check = {
  code: 'joint-short',
  severity: 'stop',
  basis: COMMON,
  find: ({ joints, shop }) =>
    joints.short.map((joint) => ({
      parts: [joint.host.id, joint.guest.id],
      values: {
        host: text(joint.host.id),
        guest: text(joint.guest.id),
        shared: meters(Math.max(0, joint.to - joint.from)),
        least: meters(leastOverlap(shop)),
      },
    })),
}
