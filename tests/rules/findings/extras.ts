/** A case for each check of extras. */
import { type Cases, flat } from './support.ts'

export const extras: Cases = {
  'auger-on-rock': {
    raise: { site: { bottom: 'rock' }, dock: { extras: { 'anchor-post': 1 } } },
    neighbor: { site: { bottom: 'gravel' }, dock: { extras: { 'anchor-post': 1 } } },
    tells: {
      parts: ['anchor-post.1'],
      values: { posts: ['anchor-post.1'] },
      where: { '/dock/extras/anchor-post': undefined },
    },
    helped: true,
  },
  // Longest post 14 ft = 4.2672 m: 0.45 + 0.1524 above, 0.9144 in the bottom: depth up to 2.7504 m.
  'post-too-short': {
    raise: { site: flat(2.76), dock: { extras: { 'anchor-post': 1 } } },
    neighbor: { site: flat(2.75), dock: { extras: { 'anchor-post': 1 } } },
    // 0.45 + 0.1524 + 2.76 + 0.9144
    tells: {
      parts: ['anchor-post.1'],
      values: { posts: ['anchor-post.1'], required: 4.2768, longest: 4.2672 },
      where: null,
    },
  },
  // Four legged sections: each side takes four bumpers of 2 ft on 8 ft, the end edge two on 4 ft: 34 in all.
  'extra-no-room': {
    raise: { dock: { extras: { bumper: 35 } } },
    neighbor: { dock: { extras: { bumper: 34 } } },
    tells: {
      parts: [],
      values: { extra: 'bumper', placed: 34, missing: 1 },
      where: { '/dock/extras/bumper': 34 },
    },
    helped: true,
  },
  'extra-no-place': {
    raise: { dock: { placed: [{ code: 'bumper', section: 's3', edge: 'end', along: 0.6 }] } },
    neighbor: { dock: { placed: [{ code: 'bumper', section: 's5', edge: 'end', along: 0.6 }] } },
    tells: {
      parts: [],
      values: { extra: 'bumper', section: 's3', edge: 'end', why: 'taken' },
      where: { '/dock/placed/0': undefined },
    },
    helped: true,
  },
}
