const log = document.querySelector('#log')
const planner = document.querySelector('#told')

for (const type of ['ready', 'input', 'change', 'request', 'error'])
  planner.addEventListener(`leadline-${type}`, ({ detail }) => {
    const line = document.createElement('li')
    const dock = detail?.dock
    line.textContent = [
      `leadline-${type}`,
      dock && `${dock.sections.length} sections, ${dock.totals.mass} kg`,
      dock?.pending && 'not yet checked',
      detail?.message,
    ]
      .filter(Boolean)
      .join(': ')
    log.prepend(line)
    if (log.children.length > 6) log.lastChild.remove()
  })
