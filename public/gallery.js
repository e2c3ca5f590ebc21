/**
 * The gallery: each example is a template in the page. What is in it is put beside its code, and its code is that text and the files that it
 * names: nothing is written down twice.
 */

/** How far from the window an example that asks for it is begun. */
const NEAR = '100%'

/** As it was written: indented by no more than it has to be, and attributes without a value without one. */
function textOf(template) {
  const lines = template.innerHTML.replace(/(\s[\w-]+)=""/g, '$1').split('\n')
  const written = lines.slice(1, -1)
  const indents = written.filter((line) => line.trim() !== '').map((line) => line.search(/\S/))
  return written.map((line) => line.slice(Math.min(...indents))).join('\n')
}

/** A text to read and to copy. Gives what it stands in, and the way to put the text there. */
function card(name) {
  const figure = document.createElement('figure')
  const caption = document.createElement('figcaption')
  const title = document.createElement('span')
  const button = document.createElement('button')
  const pre = document.createElement('pre')
  const code = document.createElement('code')
  title.textContent = name
  button.type = 'button'
  button.textContent = 'Copy'
  button.setAttribute('aria-label', `Copy ${name}`)
  // It may be wider than its place: then the keyboard must be able to move it.
  pre.tabIndex = 0
  button.addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(code.textContent)
      button.textContent = 'Copied'
    } catch {
      getSelection()?.selectAllChildren(code)
      button.textContent = 'Selected'
    }
    setTimeout(() => {
      button.textContent = 'Copy'
    }, 2000)
  })
  caption.append(title, button)
  pre.append(code)
  figure.append(caption, pre)
  return {
    figure,
    show: (text) => {
      code.textContent = text
    },
  }
}

async function showFile(name, show) {
  try {
    const answer = await fetch(`./${name}`)
    show(answer.ok ? (await answer.text()).trimEnd() : `${name}: ${answer.status}`)
  } catch {
    show(`${name} did not come.`)
  }
}

function near(element, begin) {
  const sight = new IntersectionObserver(
    (entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return
      sight.disconnect()
      begin()
    },
    { rootMargin: NEAR },
  )
  sight.observe(element)
}

for (const section of document.querySelectorAll('main > section')) {
  const template = section.querySelector('template')
  const lines = document.createElement('div')
  const live = document.createElement('div')
  lines.className = 'lines'
  live.className = 'live'
  const page = card('page.html')
  page.show(textOf(template))
  lines.append(page.figure)
  for (const name of (section.dataset.files ?? '').split(' ').filter(Boolean)) {
    const { figure, show } = card(name)
    lines.append(figure)
    near(section, () => showFile(name, show))
  }
  section.append(lines, live)
  // Planners begin by themselves when they come near; a frame does not.
  const begin = () => live.append(template.content.cloneNode(true))
  if ('late' in section.dataset) near(section, begin)
  else begin()
}
