/**
 * pdfjs as Node 20 can run it. That build brings what Node lacks, and puts slower functions of its own in the place of some that Node has
 * (`push`, `JSON.parse`, `JSON.stringify`), for all that runs in the process after it; those are put back.
 */
const HOLDERS = [JSON, Array.prototype]
const before = HOLDERS.map((holder) => Object.getOwnPropertyDescriptors(holder))

export const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')
// What it would load when it first opens a file.
// @ts-expect-error: it has no types.
await import('pdfjs-dist/legacy/build/pdf.worker.mjs')

HOLDERS.forEach((holder, i) => {
  for (const [name, was] of Object.entries(before[i]!))
    if ('value' in was && typeof was.value === 'function' && Reflect.get(holder, name) !== was.value)
      Object.defineProperty(holder, name, was)
})
