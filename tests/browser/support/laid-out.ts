/** What of a page's texts does not stand where it can be read: beyond the window, cut off, or printed over another. */
import type { Page } from 'playwright-core'

/** A line a fault; none where all can be read. What can be scrolled to counts as seen, what is covered on purpose (a head that stays) does not count. */
export const layoutFaults = (page: Page): Promise<string[]> =>
  page.locator('leadline-dock').evaluate((element) => {
    /** Rounding, and letters that lean over their box, px. */
    const NEAR = 2
    const faults: string[] = []
    const wide = document.documentElement.clientWidth
    if (document.documentElement.scrollWidth > wide)
      faults.push(`the page is ${document.documentElement.scrollWidth} px wide in a window of ${wide}`)
    interface Box {
      readonly left: number
      readonly right: number
      readonly top: number
      readonly bottom: number
    }
    const seen: {
      readonly box: Box
      readonly told: string
      readonly of: Element
      readonly layer: Element | null
    }[] = []
    const walker = document.createTreeWalker(element.shadowRoot!, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const of = node.parentElement
      const text = node.textContent?.trim() ?? ''
      if (!of || text === '' || of.closest('.unseen, style, option, title, desc, [hidden]')) continue
      if (!of.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue
      let scrolled = false
      let hidden = false
      let cut: Box | null = null
      let layer: Element | null = null
      for (let up: Element | null = of; up; up = up.parentElement) {
        const { overflowX, position } = getComputedStyle(up)
        if (overflowX === 'auto' || overflowX === 'scroll') scrolled = true
        // Told to whoever listens, not shown.
        if (up.clientWidth === 1) hidden = true
        if ((overflowX === 'hidden' || overflowX === 'clip') && !cut) cut = up.getBoundingClientRect()
        if ((position === 'sticky' || position === 'absolute' || position === 'fixed') && !layer) layer = up
      }
      if (hidden) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      for (const box of range.getClientRects()) {
        if (box.width < NEAR || box.height < NEAR) continue
        const told = `${of.tagName.toLowerCase()}.${of.getAttribute('class') ?? ''} "${text.slice(0, 50)}"`
        if (!scrolled && (box.left < -NEAR || box.right > wide + NEAR))
          faults.push(`out of the window (${Math.round(box.left)} to ${Math.round(box.right)}): ${told}`)
        else if (!scrolled && cut && (box.left < cut.left - NEAR || box.right > cut.right + NEAR))
          faults.push(
            `cut off (${Math.round(box.left)} to ${Math.round(box.right)} of ${Math.round(cut.left)} to ${Math.round(cut.right)}): ${told}`,
          )
        if (!scrolled) seen.push({ box, told, of, layer })
      }
    }
    seen.sort((a, b) => a.box.top - b.box.top)
    for (const [i, a] of seen.entries())
      for (let k = i + 1; k < seen.length && seen[k]!.box.top < a.box.bottom; k++) {
        const b = seen[k]!
        if (a.layer !== b.layer || a.of.contains(b.of) || b.of.contains(a.of)) continue
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        // Boxes of lines are higher than their letters.
        if (across > NEAR && down > 0.3 * Math.min(a.box.bottom - a.box.top, b.box.bottom - b.box.top))
          faults.push(`over each other: ${a.told} and ${b.told}`)
      }
    return [...new Set(faults)]
  })
