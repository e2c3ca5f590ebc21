/** An answer's text, as far as it may go: what is packed small may come out large, and no length told beforehand is to be believed. */

/** @param most characters. Rejects where there are more; what comes after them is not waited for. */
export async function limitedText(response: Response, most: number): Promise<string> {
  if (!response.body) return ''
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader()
  let text = ''
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return text
    text += value
    if (text.length <= most) continue
    reader.cancel().catch(() => {})
    throw new Error(`more than ${most} characters`)
  }
}
