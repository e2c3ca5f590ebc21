/*
 * For a page that shows a planner of another site in a frame: <iframe data-leadline="https://docks.example/frame.html" title="Dock planner"></iframe>
 * Sets the frame's height, tells the planner what of it is in sight, and tells the page what the planner tells, as events of the frame:
 * leadline-ready, -input, -change, -request, -error. frame.leadline.set({ … }) and frame.leadline.ask('design' | 'reset' | 'snapshot' | 'export', { … }).
 * With `data-takes-requests` requests for a quote are the page's: event.preventDefault(), and event.detail.receipt as the element has it.
 */
for (const frame of document.querySelectorAll('iframe[data-leadline]:not([src])')) {
  const url = new URL(frame.dataset.leadline, location.href)
  const asked = new Map()
  let last = 0
  const send = (message) => frame.contentWindow.postMessage({ leadline: 1, ...message }, url.origin)
  const see = () => {
    const { top, bottom } = frame.getBoundingClientRect()
    send({ type: 'seen', top: Math.max(0, -top), bottom: Math.max(0, bottom - innerHeight) })
  }
  const tell = (type, detail) => {
    const event = new CustomEvent(`leadline-${type}`, {
      detail,
      bubbles: true,
      cancelable: type === 'request',
    })
    const taken = !frame.dispatchEvent(event)
    if (type !== 'request') return
    Promise.resolve(taken || detail.receipt ? detail.receipt : Promise.reject()).then(
      (receipt) =>
        send({
          type: 'receipt',
          id: detail.id,
          received: true,
          ...(receipt?.reference && { reference: String(receipt.reference).slice(0, 80) }),
        }),
      () => send({ type: 'receipt', id: detail.id, received: false }),
    )
  }
  frame.leadline = {
    set: (what) => send({ type: 'set', ...what }),
    ask: (what, rest) =>
      new Promise((done, failed) => {
        const id = String(++last)
        asked.set(id, { done, failed })
        send({ type: 'ask', id, what, ...rest })
      }),
  }
  addEventListener('message', ({ source, origin, data }) => {
    if (source !== frame.contentWindow || origin !== url.origin || data?.leadline !== 1) return
    const { type, detail, id } = data
    if (type === 'height' && data.height > 0 && data.height < 1e5) {
      frame.style.height = `${data.height}px`
      see()
    } else if (type === 'answer' && asked.has(id)) {
      const { done, failed } = asked.get(id)
      asked.delete(id)
      if (data.ok) done(data.value)
      else failed(new Error(data.message))
    } else if (['ready', 'input', 'change', 'request', 'error'].includes(type)) tell(type, detail)
  })
  frame.addEventListener('load', () => {
    send({ type: 'hello', takes: 'takesRequests' in frame.dataset })
    see()
  })
  for (const type of ['scroll', 'resize'])
    addEventListener(type, () => requestAnimationFrame(see), { passive: true })
  frame.src = url.href
}
