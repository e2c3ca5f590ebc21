import { type Check, meters, names, SHOP, worst } from './check.ts'

/** No stock post reaches from the bottom to over the deck. */
export const postTooShort: Check = {
  code: 'post-too-short',
  severity: 'stop',
  basis: SHOP,
  find({ extras }) {
    const short = extras.placed.filter((e) => e.post && !e.post.stock)
    if (short.length === 0) return []
    const { post, extra } = worst(short, (e) => e.post!.required)
    const longest = extra.place === 'post' ? Math.max(...extra.posts.map((p) => p.length)) : 0
    return [
      {
        parts: short.map((e) => e.id),
        values: {
          posts: names(short.map((e) => e.id)),
          required: meters(post!.required),
          longest: meters(longest),
        },
      },
    ]
  },
}
